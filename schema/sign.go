package main

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"strings"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/seal"
	"boxwright/pricing/sign"
	"boxwright/pricing/tables"
)

// signFile signs a catalogue's file as the plant with the key of another file, and writes
// it back. The passphrase of a sealed key is a line of in.
func signFile(keyName, name string, in io.Reader, out, errs io.Writer) int {
	fail := func(err error) int {
		fmt.Fprintln(errs, err)
		return 2
	}
	raw, err := os.ReadFile(keyName)
	if err != nil {
		return fail(err)
	}
	file, err := readFile(name)
	if err != nil {
		return fail(err)
	}
	if _, err := quote.Accept(file); err != nil && !onlyItsSignature(err) {
		return refused(name, err.(config.Problems), errs)
	}
	key, err := keyIn(raw, in, errs)
	if err != nil {
		return fail(fmt.Errorf("%s: %w", keyName, err))
	}
	signed, err := tables.Sign(file, key)
	if err == nil {
		_, err = quote.Accept(signed)
	}
	if err == nil {
		err = os.WriteFile(name, signed, 0o644)
	}
	if err != nil {
		return fail(err)
	}
	fmt.Fprintf(out, "%s is signed. A page that takes only what this key signed:\n  go run ./web/pack -catalogue %s "+
		"-plant %s\n",
		name, name, sign.Text(key.Public()))
	return 0
}

// onlyItsSignature reports whether nothing is wrong with a catalogue but the signature that
// is to be replaced.
func onlyItsSignature(err error) bool {
	ps, ok := err.(config.Problems)
	return ok && len(ps) == 1 && ps[0].Code == "catalogue.signature"
}

// keyIn is the key of a file, sealed or not.
func keyIn(raw []byte, in io.Reader, errs io.Writer) (*sign.Key, error) {
	if !seal.Sealed(raw) {
		return sign.Read(raw)
	}
	fmt.Fprint(errs, "passphrase: ")
	line, err := bufio.NewReader(in).ReadString('\n')
	if err != nil && line == "" {
		return nil, err
	}
	return sign.Open(raw, strings.TrimRight(line, "\r\n"))
}
