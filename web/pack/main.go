// Command pack builds the page into dist/ and can serve it on this machine.
//
//	go run ./web/pack          build both forms
//	go run ./web/pack -serve   build, then serve the folder form
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"boxwright/web/pack/site"
)

func main() {
	serve := flag.Bool("serve", false, "serve the page on localhost after building")
	port := flag.String("port", "8642", "port to prefer")
	flag.Parse()
	if err := run(*serve, *port); err != nil {
		fmt.Fprintln(os.Stderr, "pack:", err)
		os.Exit(1)
	}
}

func run(serve bool, port string) error {
	root, err := site.Root()
	if err != nil {
		return err
	}
	parts, err := site.Gather(root)
	if err != nil {
		return err
	}
	if parts.Note != "" {
		fmt.Println("note   ", parts.Note)
	}
	dist := filepath.Join(root, "dist")
	if err := parts.Write(dist); err != nil {
		return err
	}
	total, core, err := parts.Size()
	if err != nil {
		return err
	}
	fmt.Printf("built   %s (%d KB on the line, of which the core %d KB)\n", filepath.Join(dist, site.FolderForm), total/1024, core/1024)
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
