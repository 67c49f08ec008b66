// Command pictures takes the pictures of the README anew: a quote at work, a page of
// paper, and a quote that was sent, on a phone. make pictures runs it.
package main

import (
	"fmt"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"boxwright/web/e2e/drive"
	"boxwright/web/pack/site"
)

// mostBytes is how large a picture may be.
const mostBytes = 150_000

// telephone is a usual one.
var telephone = drive.Screen{Width: 390, Height: 844}

func main() {
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "pictures:", err)
		os.Exit(1)
	}
}

func run() error {
	root, err := site.Root()
	if err != nil {
		return err
	}
	_, dist, err := site.Temporary(root)
	if err != nil {
		return err
	}
	defer os.RemoveAll(dist)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	host := &http.Server{Handler: site.Handler(filepath.Join(dist, site.FolderForm)), ReadHeaderTimeout: 5 * time.Second}
	go host.Serve(l) //nolint:errcheck // it ends with the program
	defer host.Close()
	b, err := drive.Start()
	if err != nil {
		return err
	}
	defer b.Close()
	c := camera{b, "http://" + l.Addr().String() + "/", filepath.Join(root, "web", "e2e", "pictures")}
	return c.all(dist)
}

// camera takes pictures of the page at an address into a folder.
type camera struct {
	b       *drive.Browser
	address string
	folder  string
}

func (c *camera) all(dist string) error {
	tab, err := c.b.Fresh(drive.Desk)
	if err != nil {
		return err
	}
	defer tab.Close()
	if err := tab.Open(c.address); err != nil {
		return err
	}
	for _, press := range []string{"#begin-cut-14500-158-gas", "#area-unit", "#chapter-exterior"} {
		if err := tab.Click(press); err != nil {
			return err
		}
	}
	if err := c.screen(tab, "unit.webp"); err != nil {
		return err
	}
	if err := tab.Click("#area-quote"); err != nil {
		return err
	}
	if err := tab.Settle(); err != nil {
		return err
	}
	if err := c.paper(tab, filepath.Join(dist, "quote.pdf")); err != nil {
		return err
	}
	link, err := drive.Eval[string](tab, `document.getElementById("link-text").value.replace(/^[^#]*/, "")`)
	if err != nil {
		return err
	}
	phone, err := c.b.Fresh(telephone)
	if err != nil {
		return err
	}
	defer phone.Close()
	if err := phone.Open(c.address + link); err != nil {
		return err
	}
	return c.screen(phone, "phone.webp")
}

// screen takes what a window shows once all is answered.
func (c *camera) screen(tab *drive.Tab, name string) error {
	if err := tab.Settle(); err != nil {
		return err
	}
	photo, err := tab.Photo()
	if err != nil {
		return err
	}
	return c.keep(name, photo)
}

// paper takes the first page of what is printed.
func (c *camera) paper(tab *drive.Tab, file string) error {
	pdf, err := tab.PDF()
	if err != nil {
		return err
	}
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		return err
	}
	draw := exec.Command("pdftoppm", "-jpeg", "-jpegopt", "quality=70", "-r", "80", "-f", "1", "-l", "1", file)
	draw.Stderr = os.Stderr
	page, err := draw.Output()
	if err != nil {
		return fmt.Errorf("drawing the page: %w", err)
	}
	return c.keep("paper.jpg", page)
}

func (c *camera) keep(name string, picture []byte) error {
	if len(picture) > mostBytes {
		return fmt.Errorf("%s has %d bytes; the most is %d", name, len(picture), mostBytes)
	}
	return os.WriteFile(filepath.Join(c.folder, name), picture, 0o644)
}
