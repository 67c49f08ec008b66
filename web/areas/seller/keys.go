package seller

import (
	"bytes"
	"encoding/base64"

	"boxwright/pricing/seal"
	"boxwright/pricing/sign"
	"boxwright/web/session"
)

// The signing key is opened for one signature at a time and never kept open; the page
// keeps it sealed, beside its public half.

// newKey makes a signing key and seals it: Value is the passphrase, Random 64
// random bytes.
func newKey(s *session.Session, a session.Act) {
	random, _ := base64.StdEncoding.DecodeString(a.Random)
	source := bytes.NewReader(random)
	k, err := sign.New(source)
	if err != nil {
		s.Fault("No key was made: %s.", session.Plain(err))
		return
	}
	keepKey(s, k, source, a.Value, "A signing key was made, sealed with your passphrase and saved on this device. "+
		"Save its file too, and give the public key to whoever keeps the catalogue.")
}

// importKey takes a key from a file, sealed or not yet.
func importKey(s *session.Session, a session.Act) {
	file, err := base64.StdEncoding.DecodeString(a.File)
	if err != nil || len(file) == 0 {
		s.Fault("There is no key to take: choose its file.")
		return
	}
	if !seal.Sealed(file) {
		k, err := sign.Read(file)
		if err != nil {
			s.Fault("The key was not taken: %s.", session.Plain(err))
			return
		}
		random, _ := base64.StdEncoding.DecodeString(a.Random)
		keepKey(s, k, bytes.NewReader(random), a.Value, "The signing key is sealed with your passphrase and saved on "+
			"this device.")
		return
	}
	k, err := sign.Open(file, a.Value)
	if err != nil {
		s.Fault("The key was not taken: %s.", session.Plain(err))
		return
	}
	s.Step(session.Step{Do: "keep-key", Text: a.File, ID: sign.Text(k.Public())})
	s.Req.Key = sign.Text(k.Public())
	s.Notice = "The signing key is saved on this device, sealed as it was."
}

func keepKey(s *session.Session, k *sign.Key, random *bytes.Reader, passphrase, said string) {
	sealed, err := k.Seal(random, passphrase)
	if err != nil {
		s.Fault("The key was not kept: %s.", session.Plain(err))
		return
	}
	s.Req.Key = sign.Text(k.Public())
	s.Step(session.Step{Do: "keep-key", Text: base64.StdEncoding.EncodeToString(sealed), ID: s.Req.Key})
	s.Step(session.Step{Do: "focus", ID: "key-export"})
	s.Notice = said
}

// exportKey saves the sealed file that the page keeps.
func exportKey(s *session.Session, a session.Act) {
	if a.File == "" {
		s.Fault("No signing key is saved on this device.")
		return
	}
	s.View.KeySaved = true
	s.Step(session.Step{Do: "save", Name: "signing-key.sealed", Type: "application/octet-stream", Text: a.File,
		Base64: true})
}

func forgetKey(s *session.Session, _ session.Act) {
	s.Req.Key, s.View.KeySaved = "", false
	s.Step(session.Step{Do: "keep-key"})
	s.Notice = "The signing key was removed from this device."
}
