package site

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/config/body"
	"boxwright/pricing/quote/quotetest"
	"boxwright/web/drawing"
	"boxwright/web/page/pagetest"
)

// measure reads a drawing with a reader that is not ours and prints its size.
const measure = `
import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";
const { entities, tables } = new DxfParser().parseSync(readFileSync(process.argv[1], "utf8"));
const u = [], v = [], layers = new Set();
for (const e of entities) {
  layers.add(e.layer);
  if (e.type === "CIRCLE") for (const d of [-e.radius, e.radius]) u.push(e.center.x + d), v.push(e.center.y + d);
  else if (e.type === "POLYLINE") for (const p of e.vertices) u.push(p.x), v.push(p.y);
}
const size = (list) => Math.max(...list) - Math.min(...list);
const known = Object.keys(tables.layer.layers);
console.log(JSON.stringify({ wide: size(u), high: Math.max(...v), shapes: entities.length,
  unknown: [...layers].filter((l) => !known.includes(l)) }));
`

// sheets reads the drawing set: the frame of each sheet, and every dimension.
const sheets = `
import { readFileSync } from "node:fs";
import DxfParser from "dxf-parser";
const { entities } = new DxfParser().parseSync(readFileSync(process.argv[1], "utf8"));
const wide = (e) => Math.max(...e.vertices.map((p) => p.x)) - Math.min(...e.vertices.map((p) => p.x));
const of = (layer, more) => entities.filter((e) => e.type === "POLYLINE" && e.layer === layer && more(e)).map(wide);
console.log(JSON.stringify({ frames: of("FRAME", (e) => e.shape), spans: of("DIM", () => true),
  texts: entities.filter((e) => e.type === "TEXT").map((e) => e.text) }));
`

// The drawing set, read by another program, has a frame for each sheet, as many times as
// large as its paper as the scale says, and its dimensions are as long as they say.
func TestAnotherReaderMeasuresTheSet(t *testing.T) {
	node, err := exec.LookPath("node")
	require.NoError(t, err)
	root, err := Root()
	require.NoError(t, err)
	p := pagetest.Of(t, quotetest.Demo(t), "cut-14500-158-gas", true)
	var list []drawing.Sheet
	for _, x := range drawing.Set(p, nil) {
		list = append(list, drawing.Sheet{Plate: x, Cells: [][2]string{{"Purchaser", "Ünit “A” 50% × 2"}}})
	}
	file := filepath.Join(t.TempDir(), "set.dxf")
	require.NoError(t, os.WriteFile(file, drawing.SheetsDXF(list...), 0o600))
	run := exec.Command(node, "--input-type=module", "-e", sheets, file)
	run.Dir = filepath.Join(root, "web")
	out, err := run.CombinedOutput()
	require.NoError(t, err, "%s", out)
	var got struct {
		Frames, Spans []float64
		Texts         []string
	}
	require.NoError(t, json.Unmarshal(out, &got), "%s", out)
	require.Len(t, got.Frames, len(list))
	for i, x := range list {
		assert.InDelta(t, 16.3*float64(x.Scale), got.Frames[i], 0.01, x.Title)
	}
	o := p.Q.Space.Model.Overall()
	has := func(want float64, what string) {
		near := func(v float64) bool { return v > want-0.01 && v < want+0.01 }
		assert.True(t, slices.ContainsFunc(got.Spans, near), "%s: %v among %v", what, want, got.Spans)
	}
	has(float64(o.LengthIn), "length over all")
	has(float64(o.WidthIn), "width over all")
	has(p.Q.Space.Model.RearAxle, "wheelbase")
	assert.Contains(t, got.Texts, p.Show(float64(o.LengthIn), "in"))
	assert.Contains(t, got.Texts, "Street side")
}

// A reader of the format that is not ours measures what the figures say, to a hundredth of
// an inch, on every chassis.
func TestAnotherReaderMeasuresTheDrawing(t *testing.T) {
	node, err := exec.LookPath("node")
	require.NoError(t, err)
	root, err := Root()
	require.NoError(t, err)
	web := filepath.Join(root, "web")
	require.DirExists(t, filepath.Join(web, "node_modules", "dxf-parser"), "run make packages first")
	ed := quotetest.Demo(t)
	for i := range ed.Cat.Chassis {
		id := ed.Cat.Chassis[i].ID
		t.Run(id, func(t *testing.T) {
			u := pagetest.Of(t, ed, id, true).Q.Draft.Unit.Clone()
			for _, o := range ed.Cat.Options {
				for _, at := range o.Places {
					if at.Kind == "antenna" || at.Kind == "mirror" { // overall sizes leave them out
						u.Drop(o.ID)
					}
				}
			}
			m := body.Of(ed.Cat, &u)
			o := m.Overall()
			for view, wide := range map[string]float64{"street": float64(o.LengthIn), "rear": float64(o.WidthIn)} {
				file := filepath.Join(t.TempDir(), "unit.dxf")
				require.NoError(t, os.WriteFile(file, drawing.DXF(drawing.ViewOf(m, view)), 0o600))
				run := exec.Command(node, "--input-type=module", "-e", measure, file)
				run.Dir = web
				out, err := run.CombinedOutput()
				require.NoError(t, err, "%s", out)
				var got struct {
					Wide, High float64
					Shapes     int
					Unknown    []string
				}
				require.NoError(t, json.Unmarshal(out, &got), "%s", out)
				assert.InDelta(t, wide, got.Wide, 0.01, view)
				assert.InDelta(t, float64(o.HeightIn), got.High, 0.01, view)
				assert.Empty(t, got.Unknown, "each layer is listed")
				assert.Greater(t, got.Shapes, 20)
			}
		})
	}
}
