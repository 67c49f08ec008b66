package site

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"

	"boxwright/web/pack/strip"
)

// Names of the two forms inside the output directory.
const (
	FolderForm = "site"
	SingleForm = "boxwright.html"
)

// Parts are the pieces both forms are made from.
type Parts struct {
	Core   []byte // the linked core, as the browser runs it
	Wasm   []byte // the same, packed
	App    []byte // main-thread script
	Worker []byte // worker script, with the toolchain's loader before it
	Style  []byte
	Page   []byte // html with marks where the pieces go
	Icon   []byte
	// Catalogue takes the place of the demonstration in both forms; nil without.
	Catalogue []byte
	// For the folder form alone: what makes it installable and keeps it for use
	// without a network.
	Service  []byte
	Manifest []byte
	Note     string // what could not be done and does no harm, for the reader
}

// Root finds the repository from the working directory: the folder of go.mod.
func Root() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		up := filepath.Dir(dir)
		if up == dir {
			return "", errors.New("run this inside the repository: no go.mod above the working directory")
		}
		dir = up
	}
}

// BuildWasm compiles the core for the browser into file.
func BuildWasm(root, file string) error {
	args := append([]string{"build"}, WasmFlags...)
	cmd := exec.Command("go", append(args, "-o", file, "./wasm")...)
	cmd.Dir = root
	cmd.Env = append(os.Environ(), WasmEnv...)
	if out, err := cmd.CombinedOutput(); err != nil {
		return fmt.Errorf("building the wasm: %w\n%s", err, out)
	}
	return nil
}

// Loader reads the loader script that belongs to the toolchain in use.
func Loader() ([]byte, error) {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return nil, fmt.Errorf("asking go for its GOROOT: %w", err)
	}
	return os.ReadFile(filepath.Join(strings.TrimSpace(string(out)), "lib", "wasm", "wasm_exec.js"))
}

// Gather compiles and bundles every part.
func Gather(root string) (*Parts, error) {
	assets := filepath.Join(root, "web", "assets")
	if _, err := os.Stat(filepath.Join(root, "web", "node_modules", "idiomorph")); err != nil {
		return nil, errors.New("the npm packages are missing: run npm ci in web/ (make does it)")
	}
	tmp, err := os.CreateTemp("", "core-*.wasm")
	if err != nil {
		return nil, err
	}
	tmp.Close()
	defer os.Remove(tmp.Name())
	if err := BuildWasm(root, tmp.Name()); err != nil {
		return nil, err
	}
	linked, err := os.ReadFile(tmp.Name())
	if err != nil {
		return nil, err
	}
	p := new(Parts)
	if p.Core, err = strip.Core(linked); err != nil {
		p.Note = "the core keeps its stack traces and is larger for it: " + err.Error()
	}
	if p.Wasm, err = packed(root, p.Core, filepath.Join(root, "dist", ".packed")); err != nil {
		return nil, err
	}
	if p.App, err = bundle(filepath.Join(assets, "app.js")); err != nil {
		return nil, err
	}
	loader, err := Loader()
	if err != nil {
		return nil, err
	}
	loader, err = minify(loader)
	if err != nil {
		return nil, err
	}
	worker, err := bundle(filepath.Join(assets, "worker.js"))
	if err != nil {
		return nil, err
	}
	p.Worker = append(append(loader, '\n'), worker...)
	if p.Style, err = bundle(filepath.Join(assets, "style.css")); err != nil {
		return nil, err
	}
	if p.Page, err = os.ReadFile(filepath.Join(assets, "index.html")); err != nil {
		return nil, err
	}
	if p.Icon, err = os.ReadFile(filepath.Join(assets, "icon.svg")); err != nil {
		return nil, err
	}
	if p.Manifest, err = os.ReadFile(filepath.Join(assets, "manifest.json")); err != nil {
		return nil, err
	}
	p.Service, err = bundle(filepath.Join(assets, "service.js"))
	return p, err
}

func squeeze(text []byte) ([]byte, error) {
	var b bytes.Buffer
	w := gzip.NewWriter(&b)
	if _, err := w.Write(text); err != nil {
		return nil, err
	}
	err := w.Close()
	return b.Bytes(), err
}

func bundle(entry string) ([]byte, error) {
	r := api.Build(api.BuildOptions{
		EntryPoints: []string{entry}, Bundle: true, Format: api.FormatIIFE, Target: api.ES2022, Charset: api.CharsetUTF8,
		Loader:           map[string]api.Loader{".html": api.LoaderText},
		MinifyWhitespace: true, MinifyIdentifiers: true, MinifySyntax: true, LegalComments: api.LegalCommentsNone, LogLevel: api.LogLevelSilent,
	})
	if len(r.Errors) > 0 {
		return nil, fmt.Errorf("bundling %s: %s", filepath.Base(entry), strings.Join(api.FormatMessages(r.Errors, api.FormatMessagesOptions{}), ""))
	}
	return r.OutputFiles[0].Contents, nil
}

func minify(js []byte) ([]byte, error) {
	r := api.Transform(string(js), api.TransformOptions{Loader: api.LoaderJS, MinifyWhitespace: true, MinifySyntax: true, LegalComments: api.LegalCommentsNone})
	if len(r.Errors) > 0 {
		return nil, fmt.Errorf("minifying the loader: %s", r.Errors[0].Text)
	}
	return r.Code, nil
}

// Single is the form of one file.
func (p *Parts) Single() []byte { return p.single() }

// Write puts both forms under dir, replacing what was there.
func (p *Parts) Write(dir string) error {
	folder := filepath.Join(dir, FolderForm)
	if err := os.RemoveAll(folder); err != nil {
		return err
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	for name, data := range p.folder() {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return os.WriteFile(filepath.Join(dir, SingleForm), p.single(), 0o644)
}

// folder names each file by its content, so that a host may cache it for good.
func (p *Parts) folder() map[string][]byte {
	core := named("core", p.Wasm, "wasm.zst")
	worker := named("worker", p.Worker, "js")
	app := named("app", p.App, "js")
	style := named("style", p.Style, "css")
	files := map[string][]byte{core: p.Wasm, worker: p.Worker, app: p.App, style: p.Style, "icon.svg": p.Icon, "manifest.json": p.Manifest}
	own := ""
	if p.Catalogue != nil {
		name := named("catalogue", p.Catalogue, "json")
		files[name], own = p.Catalogue, `" data-catalogue="`+name
	}
	page := fill(p.Page, map[string]string{
		"policy":   "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; manifest-src 'self'; connect-src 'self'; style-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'",
		"style":    `<link rel="stylesheet" href="` + style + `">`,
		"icon":     "icon.svg",
		"manifest": `<link rel="manifest" href="manifest.json">`,
		"script":   `<script defer src="` + app + `" data-worker="` + worker + `" data-core="` + core + own + `" data-service="service.js"></script>`,
	})
	files["index.html"] = page
	files["service.js"] = serviceFor(files, p.Service)
	return files
}

// serviceFor tells the service worker which files are its version.
func serviceFor(files map[string][]byte, script []byte) []byte {
	names := slices.Sorted(maps.Keys(files))
	all := sha256.New()
	for _, n := range names {
		sum := sha256.Sum256(files[n])
		all.Write(append([]byte(n), sum[:]...))
	}
	names[slices.Index(names, "index.html")] = "./" // a host may send on from its name, and a page may not come from there
	list := "\"" + strings.Join(names, "\",\"") + "\""
	return append([]byte("const FILES=["+list+"],VERSION=\""+hex.EncodeToString(all.Sum(nil)[:8])+"\";"), script...)
}

// single is one file that needs no network: scripts and style are allowed by
// their hashes and nothing may be fetched at all. The page makes such a file of
// itself in web/assets/embed.js, byte for byte.
func (p *Parts) single() []byte {
	app := string(p.App)
	style := string(p.Style)
	own := ""
	if p.Catalogue != nil {
		own = `<script type="text/plain" id="catalogue-text">` + base64.StdEncoding.EncodeToString(p.Catalogue) + `</script>`
	}
	icon := "data:image/svg+xml;base64," + base64.StdEncoding.EncodeToString(p.Icon)
	return fill(p.Page, map[string]string{
		"policy":   "default-src 'none'; script-src '" + digest(app) + "' 'wasm-unsafe-eval'; worker-src blob:; style-src '" + digest(style) + "'; img-src data:; base-uri 'none'; form-action 'none'",
		"style":    "<style>" + style + "</style>",
		"icon":     icon,
		"manifest": "",
		"script": `<script type="text/plain" id="worker-text">` + base64.StdEncoding.EncodeToString(p.Worker) + `</script>` +
			`<script type="text/plain" id="core-text">` + base64.StdEncoding.EncodeToString(p.Wasm) + `</script>` + own +
			"<script>" + app + "</script>",
	})
}

func named(stem string, data []byte, ext string) string {
	sum := sha256.Sum256(data)
	return stem + "." + hex.EncodeToString(sum[:6]) + "." + ext
}

func digest(text string) string {
	sum := sha256.Sum256([]byte(text))
	return "sha256-" + base64.StdEncoding.EncodeToString(sum[:])
}

// fill replaces the marks {{name}} of the page. What takes their place may hold
// such marks of its own, and keeps them: the script has a page in it.
func fill(page []byte, marks map[string]string) []byte {
	var pairs []string
	for name, value := range marks {
		pairs = append(pairs, "{{"+name+"}}", value)
	}
	return []byte(strings.NewReplacer(pairs...).Replace(string(page)))
}

// Size is what a visitor downloads: the core with its catalogue as it lies
// there, scripts, style and page as a host packs them, with gzip.
func (p *Parts) Size() (total, core int, err error) {
	total, core = len(p.Wasm), len(p.Wasm)
	for _, text := range [][]byte{p.App, p.Worker, p.Style, p.Page, p.Service, p.Manifest} {
		z, err := squeeze(text)
		if err != nil {
			return 0, 0, err
		}
		total += len(z)
	}
	return total, core, nil
}
