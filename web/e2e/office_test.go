package e2e

import (
	"archive/zip"
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"boxwright/web/e2e/drive"
)

// zipped is a file of parts, as word processors and spreadsheets write them.
func zipped(t *testing.T, parts map[string]string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for name, text := range parts {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(w, `<?xml version="1.0" encoding="UTF-8"?>`+text)
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return b.Bytes()
}

// workbook is a purchaser's spreadsheet: a hidden sheet, headings beneath a title, texts
// shared, inline and of a formula, and a style that has to stay.
func workbook(t *testing.T) []byte {
	const main = `xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"`
	const links = `http://schemas.openxmlformats.org/officeDocument/2006/relationships`
	return zipped(t, map[string]string{
		"[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`,
		"xl/workbook.xml": `<workbook ` + main + ` xmlns:r="` + links + `"><sheets><sheet name="Lists" sheetId="1" state="hidden" ` +
			`r:id="rId1"/><sheet name="Ambulance" sheetId="2" r:id="rId2"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
			`<Relationship Id="rId1" Type="` + links + `/worksheet" Target="worksheets/sheet1.xml"/>` +
			`<Relationship Id="rId2" Type="` + links + `/worksheet" Target="worksheets/sheet2.xml"/></Relationships>`,
		"xl/sharedStrings.xml": `<sst ` + main + `><si><t>Item No.</t></si><si><r><t>Specification </t></r><r><t>Requirement</t></r></si>` +
			`<si><t>Comply (Y/N)</t></si><si><t>Exceptions</t></si><si><t>Payload not less than 2,000 lb</t></si></sst>`,
		"xl/worksheets/sheet1.xml": `<worksheet ` + main + `><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>` +
			strings.Repeat("hidden ", 90) + `</t></is></c></row></sheetData></worksheet>`,
		"xl/worksheets/sheet2.xml": `<worksheet ` + main + `><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Alder County</t></is></c></row>` +
			`<row r="3"><c r="A3" t="s"><v>0</v></c><c r="B3" t="s"><v>1</v></c><c r="C3" t="s"><v>2</v></c><c r="D3" t="s"><v>3</v></c></row>` +
			`<row r="4"><c r="A4"><v>3.1</v></c><c r="B4" t="s"><v>4</v></c><c r="C4" s="7"/></row>` +
			`<row r="5"><c r="A5"><v>3.2</v></c><c r="B5" t="str"><f>B9</f><v>Overall height not to exceed 100 in</v></c></row>` +
			`</sheetData></worksheet>`,
	})
}

// A purchaser's spreadsheet is opened, answered, and filled in as it came.
func TestAPurchasersSpreadsheet(t *testing.T) {
	t.Parallel()
	eachForm(t, func(t *testing.T, f form) {
		w := open(t, f, drive.Desk, "", catching)
		w.begin("cut-14500-158-gas", "mod-146-72")
		w.area("needs")
		eval[bool](w, `(document.getElementById("fold-requirements").open = true)`)
		file := written(t, "list.xlsx", workbook(t))
		w.takes("#f-list-file", file, "2 lines: 1 comply, 1 exception.")
		require.Contains(t, w.text("#requirements"), "3.1 Payload not less than 2,000 lb")

		eval[bool](w, `(globalThis.__saved = undefined, true)`)
		w.must(w.Choose("#f-fill-file", file))
		w.must(w.Until(`globalThis.__saved`))
		require.Equal(t, "list-answered.xlsx", eval[string](w, `globalThis.__name`))
		sheet := eval[string](w, `globalThis.__saved.arrayBuffer().then(async (b) => {
			const bytes = new Uint8Array(b), text = new TextDecoder("latin1").decode(bytes);
			const name = "xl/worksheets/sheet2.xml", at = text.indexOf(name), view = new DataView(b);
			const size = view.getUint32(at - 12, true), start = at + name.length + view.getUint16(at - 2, true);
			const stream = new Blob([bytes.slice(start, start + size)]).stream().pipeThrough(new DecompressionStream("deflate-raw"));
			return new Response(stream).text(); })`)
		require.Contains(t, sheet, `<c r="C4" s="7" t="inlineStr"><is><t xml:space="preserve">Y</t></is></c>`)
		require.Contains(t, sheet, `<c r="C5" t="inlineStr"><is><t xml:space="preserve">N</t></is></c>`)
		require.Contains(t, sheet, "Overall height, with roof equipment: 106.4 in, 6.4 in over")
		require.Contains(t, sheet, "<f>B9</f>", "what was a formula stays one")
	})
}

// A document's numbers are printed by its lists and stand nowhere in its text; they stay.
func TestAPurchasersDocument(t *testing.T) {
	t.Parallel()
	const main = `xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main"`
	item := func(level, text string) string {
		return `<w:p><w:pPr><w:numPr><w:ilvl w:val="` + level + `"/><w:numId w:val="1"/></w:numPr></w:pPr><w:r><w:t>` +
			text + `</w:t></w:r></w:p>`
	}
	document := zipped(t, map[string]string{
		"word/document.xml": `<w:document ` + main + `><w:body><w:p><w:r><w:t>SECTION 4 BODY</w:t></w:r></w:p>` + item("0", "Doors") +
			item("1", "Rear doors, flush pair") + item("1", "Side entry door 30 in wide") + item("0", "Cot") +
			item("1", "Powered cot") + `<w:p><w:pPr><w:pStyle w:val="Heading1"/></w:pPr><w:r><w:t>Warranty</w:t></w:r></w:p>` +
			`<w:p><w:r><w:t>Structural: 20 years</w:t></w:r></w:p></w:body></w:document>`,
		"word/numbering.xml": `<w:numbering ` + main + `><w:abstractNum w:abstractNumId="5"><w:lvl w:ilvl="0"><w:start w:val="4"/><w:numFmt w:val="decimal"/>` +
			`<w:lvlText w:val="%1."/></w:lvl><w:lvl w:ilvl="1"><w:start w:val="1"/><w:numFmt w:val="lowerLetter"/><w:lvlText w:val="%1.%2)"/></w:lvl>` +
			`</w:abstractNum><w:num w:numId="1"><w:abstractNumId w:val="5"/></w:num></w:numbering>`,
	})
	w := open(t, folder, drive.Phone, "")
	w.begin("cut-14500-158-gas", "mod-146-72")
	w.area("needs")
	eval[bool](w, `(document.getElementById("fold-requirements").open = true)`)
	w.takes("#f-list-file", written(t, "list.docx", document), "4 lines: 2 comply, 2 comply with additions.")
	require.Contains(t, w.text("#requirements"), "4.b) Side entry door 30 in wide")
	require.Contains(t, w.text("#requirements"), "5.a) Powered cot")
	w.must(w.Choose("#f-list-file", written(t, "list.docx", []byte("no zip"))))
	w.must(w.Until(`document.body.innerText.includes("list.docx could not be read")`))
}
