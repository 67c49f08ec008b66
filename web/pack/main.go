// Command pack builds the page into dist/ and can serve it on this machine.
//
//	go run ./web/pack          build both forms
//	go run ./web/pack -serve   build, then serve the folder form
//	go run ./web/pack -catalogue FILE   build both with a catalogue of one's own in the place of the demonstration
//	go run ./web/pack -catalogue FILE -plant KEY   and take no catalogues but those signed with that plant's key
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"boxwright/config"
	"boxwright/pricing/quote"
	"boxwright/pricing/sign"
	"boxwright/web/pack/site"
)

func main() {
	serve := flag.Bool("serve", false, "serve the page on localhost after building")
	port := flag.String("port", "8642", "port to prefer")
	own := flag.String("catalogue", "", "`FILE` of a catalogue to build in, in the place of the demonstration")
	plant := flag.String("plant", "", "public `KEY` of the one plant whose catalogues the page takes; it signed FILE")
	flag.Parse()
	if err := run(*serve, *port, *own, *plant); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

func run(serve bool, port, own, plant string) error {
	file, err := checked(own, plant)
	if err != nil {
		return err
	}
	root, err := site.Root()
	if err != nil {
		return err
	}
	parts, err := site.GatherFor(root, plant)
	if err != nil {
		return err
	}
	parts.Catalogue = file
	dist := filepath.Join(root, "dist")
	if err := parts.Write(dist); err != nil {
		return err
	}
	total, core, err := parts.Size()
	if err != nil {
		return err
	}
	fmt.Printf("built   %s (%d KB on the line, of which the core %d KB)\n", filepath.Join(dist, site.FolderForm),
		total/1024, core/1024)
	fmt.Printf("one file, opens from disk with no network: %s\n", filepath.Join(dist, site.SingleForm))
	if !serve {
		return nil
	}
	l, err := site.Listen(port)
	if err != nil {
		return err
	}
	fmt.Printf("serving http://%s/   (Ctrl-C ends it)\n", l.Addr())
	return site.Serve(l, filepath.Join(dist, site.FolderForm))
}

// checked reads the catalogue to build in as the page would; nil when there is
// none. A page for one plant needs one that the plant signed.
func checked(name, plant string) ([]byte, error) {
	if plant != "" && (&config.Signer{Key: plant}).PublicKey() == nil {
		return nil, fmt.Errorf("-plant %s is no public key: it has 43 characters of base64url", plant)
	}
	if name == "" {
		if plant != "" {
			return nil, errors.New("-plant needs -catalogue with a file that the plant signed: the demonstration is " +
				"nobody's")
		}
		return nil, nil
	}
	file, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	ed, err := quote.Accept(file)
	if err == nil {
		if ps := sign.OfPlant(ed.Cat, plant); ps != nil {
			err = ps
		}
	}
	if err != nil {
		return nil, fmt.Errorf("%s is not built in: %w; go run ./schema check lists all", name, err)
	}
	return file, nil
}
