package main

import (
	"fmt"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"time"

	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// page prints the sizes of what is shipped, and times the page in Chromium, or only
// its "clicks", the "large" catalogues or the "list".
func page(root string, clicks int, only string) error {
	parts, dist, err := site.Temporary(root)
	if err != nil {
		return err
	}
	defer os.RemoveAll(dist)
	if err := sizes(parts, dist); err != nil {
		return err
	}

	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	pages := http.NewServeMux()
	pages.Handle("/", site.Handler(filepath.Join(dist, site.FolderForm)))
	pages.HandleFunc("/"+floor, echo)
	host := &http.Server{Handler: pages, ReadHeaderTimeout: 5 * time.Second}
	go host.Serve(l) //nolint:errcheck // it ends with the program
	defer host.Close()
	b, err := drive.Start()
	if err != nil {
		return err
	}
	defer b.Close()
	folder := "http://" + l.Addr().String() + "/"
	if only == "large" {
		return largeTimes(b, folder, clicks/2)
	}
	if only == "list" {
		return listTimes(b, root, folder, listRuns)
	}
	if only != "clicks" {
		if err := startTimes(b, folder, "file://"+filepath.Join(dist, site.SingleForm)); err != nil {
			return err
		}
	}
	if err := pressTimes(b, folder, clicks); err != nil {
		return err
	}
	if err := waitTimes(b, folder, clicks); err != nil || only != "" {
		return err
	}
	if err := listTimes(b, root, folder, listRuns); err != nil {
		return err
	}
	return largeTimes(b, folder, clicks/2)
}

func sizes(parts *site.Parts, dist string) error {
	total, packed, err := parts.Size()
	if err != nil {
		return err
	}
	single, err := os.Stat(filepath.Join(dist, site.SingleForm))
	if err != nil {
		return err
	}
	say("wasm_raw_bytes", float64(len(parts.Core)), "bytes")
	say("wasm_shipped_bytes", float64(packed), "bytes")
	say("total_shipped_bytes", float64(total), "bytes")
	say("single_file_bytes", float64(single.Size()), "bytes")
	return nil
}

// pause lets the page be for a while.
func pause(tab *drive.Tab, d time.Duration) error {
	_, err := drive.Eval[bool](tab, fmt.Sprintf(`new Promise((r) => setTimeout(() => r(true), %d))`, d.Milliseconds()))
	return err
}
