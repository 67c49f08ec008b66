package intake_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boxwright/pricing/bid/intake"
)

func TestRead(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []intake.Line
		left       int
	}{
		{"a line each, and commas stay", "Payload at least 2,000 lb\n\n5,200 lbs. minimum payload",
			[]intake.Line{{Text: "Payload at least 2,000 lb"},
				{Text: "5,200 lbs. minimum payload"}}, 0},
		{"numbers of several kinds", "1. Powered cot\n2) Siren\n3.1.4 Camera\n(a) Mats\nc) Hooks",
			[]intake.Line{{No: "1", Text: "Powered cot"},
				{No: "2)", Text: "Siren"}, {No: "3.1.4", Text: "Camera"}, {No: "(a)", Text: "Mats"}, {No: "c)", Text: "Hooks"}}, 0},
		{"a word before the number", "Sec. 5.6 Two persons shall be received.\nSec. 2.3(d) Scale ticket, please\n" +
			"§ 4.2 Doors shall be flush\nItem 12: Siren of 100 W minimum\n2.3(a) Siren with horn\nSection 4 Electrical\n" +
			"Siren", []intake.Line{{No: "Sec. 5.6", Text: "Two persons shall be received."},
			{No: "Sec. 2.3(d)", Text: "Scale ticket, please"}, {No: "§ 4.2", Text: "Doors shall be flush"},
			{No: "Item 12", Text: "Siren of 100 W minimum"}, {No: "2.3(a)", Text: "Siren with horn"},
			{Text: "Section 4 Electrical", Head: true}, {Text: "Siren"}}, 0},
		{"letters before a number", "P-07  Monitor mount\nSC-4.11 Two radios\nKKK-A-1822F applies", []intake.Line{
			{No: "P-07", Text: "Monitor mount"}, {No: "SC-4.11", Text: "Two radios"}, {Text: "KKK-A-1822F applies"}}, 0},
		{"letters within a number", "4.a) Rear doors\n3.1.iv Side door", []intake.Line{{No: "4.a)", Text: "Rear doors"},
			{No: "3.1.iv", Text: "Side door"}}, 0},
		{"an amount is no number of a line", "20 amp shore inlet\n(2) 100 watt speakers\n12 V outlet",
			[]intake.Line{{Text: "20 amp shore inlet"},
				{Text: "(2) 100 watt speakers"}, {Text: "12 V outlet"}}, 0},
		{"number and text with a comma between", "1,Powered cot\n2,\"Siren, 100 W\"", []intake.Line{{No: "1",
			Text: "Powered cot", Row: 1},
			{No: "2", Text: "Siren, 100 W", Row: 2}}, 0},
		{"a table with columns in any order", "Description;Ref\nPowered cot;A1", []intake.Line{{No: "A1",
			Text: "Powered cot", Row: 2}}, 0},
		{"a spreadsheet's clipboard", "Item No.\tSpecification Requirement\tComply (Y/N)\n1.1\tHeadroom, " +
			"72\"\t\n1.2\tPowered cot\tY",
			[]intake.Line{{No: "1.1", Text: `Headroom, 72"`, Row: 2}, {No: "1.2", Text: "Powered cot", Row: 3}}, 0},
		{"numbers before a tab, and headings without",
			"SECTION 1 CHASSIS\n1.1\tWheelbase 160\u201d maximum\n1.2\tFuel tank: 50 gal.\nSECTION 2 " +
				"BODY\n2.1\tPowered cot",
			[]intake.Line{{Text: "SECTION 1 CHASSIS", Head: true}, {No: "1.1", Text: "Wheelbase 160\u201d maximum"},
				{No: "1.2", Text: "Fuel tank: 50 gal."}, {Text: "SECTION 2 BODY", Head: true},
				{No: "2.1", Text: "Powered cot"}}, 0},
		{"a wrapped line behind a tab, and bullets",
			"SECTION 4 BODY\n•\tDual rear wheels\na)\tHeadroom 72”\nb)\tCabinets shall be aluminum; no " +
				"wood\n\tproducts are permitted.\nc)\tMats",
			[]intake.Line{{Text: "SECTION 4 BODY", Head: true}, {Text: "Dual rear wheels"},
				{No: "a)", Text: "Headroom 72”"},
				{No: "b)", Text: "Cabinets shall be aluminum; no wood products are permitted."}, {No: "c)", Text: "Mats"}}, 0},
		{"the foot of two pages", "1. Powered cot\nPage 7 of 31\nCity of Quarry Hill RFP 27-03\n2. Siren\nPage 8 of " +
			"31\nCity of Quarry Hill RFP 27-03\n3. Mats",
			[]intake.Line{{No: "1", Text: "Powered cot"}, {No: "2", Text: "Siren"}, {No: "3", Text: "Mats"}}, 4},
		{"heads are heads", "SECTION 3 OXYGEN\n3.1 CYLINDERS\n3.1.1 Two M cylinders shall be furnished\nThe " +
			"following is needed:\nNO WOOD ANYWHERE",
			[]intake.Line{{Text: "SECTION 3 OXYGEN", Head: true}, {No: "3.1", Text: "CYLINDERS", Head: true},
				{No: "3.1.1", Text: "Two M cylinders shall be furnished"},
				{Text: "The following is needed:", Head: true}, {Text: "NO WOOD ANYWHERE"}}, 0},
		{"bullets and curly quotes stay as written", "• Headroom: 72” min\n• Powered cot",
			[]intake.Line{{Text: "Headroom: 72” min"}, {Text: "Powered cot"}}, 0},
		{"wrapped lines and the foot of pages", "1. The chassis shall have a gross vehicle weight rating of not less " +
			"than\n14,000 pounds and a wheelbase of 158 inches.\nPage 1 of 2\n2. Gasoline engine",
			[]intake.Line{{No: "1", Text: "The chassis shall have a gross vehicle weight rating of not less than " +
				"14,000 pounds and a wheelbase of 158 inches."},
				{No: "2", Text: "Gasoline engine"}}, 1},
		{"the blanks of a form alone are left out", "1. Powered cot\nComply: Yes ____ No ____\n2. Siren",
			[]intake.Line{{No: "1", Text: "Powered cot"}, {No: "2", Text: "Siren"}}, 1},
		{"a sentence begun, and the headings of a table in a text",
			"1.1 The bench shall:\na) seat three\nItem\tRequirement\tComply\n2.1 Siren",
			[]intake.Line{{No: "1.1", Text: "The bench shall:", Head: true}, {No: "a)", Text: "seat three"},
				{No: "2.1", Text: "Siren"}}, 1},
		{"a list in capitals has no heads by that", "POWERED COT\nMULTIPLEX SYSTEM\nREAR CAMERA",
			[]intake.Line{{Text: "POWERED COT"}, {Text: "MULTIPLEX SYSTEM"},
				{Text: "REAR CAMERA"}}, 0},
		{"a heading ends the line before it, and an article is no ampere",
			"3.7 Squad bench shall be a minimum of 84 inches in length\nSECTION 9 TERMS\n9.1 A bid bond shall " +
				"accompany each proposal.",
			[]intake.Line{{No: "3.7", Text: "Squad bench shall be a minimum of 84 inches in length"},
				{Text: "SECTION 9 TERMS", Head: true},
				{No: "9.1", Text: "A bid bond shall accompany each proposal."}}, 0},
		{"an amount in columns of its own", "Item\tFeature\tMinimum\tUnits\tPriority\tComply\n1\tGVWR\t14,000\tlb\t5\t\n" +
			"2\tPowered cot\tYes\t\t1\t",
			[]intake.Line{{No: "1", Text: "GVWR | Minimum 14,000 | lb", Row: 2}, {No: "2", Text: "Powered cot", Row: 3}}, 0},
		{"two columns without headings", "Oxygen\tTwo M cylinders\nSquad bench\tNo",
			[]intake.Line{{Text: "Oxygen | Two M cylinders", Row: 1}, {Text: "Squad bench | No", Row: 2}}, 0},
		{"titles above and between numbered lines", "Larkspur County\nSpecifications for One Ambulance\nBid No. 27-014\n" +
			"Opening: January 14, 2027 at 2:00 p.m.\nPART ONE \u2013 GENERAL\n1.1 Gasoline engine\nChassis\n" +
			"2.1 Wheelbase not longer than\n160 inches\n2.2 Siren\nPatient Compartment\n\u2022 Mats\n\u2022 " +
			"Hooks\n\u2022 Camera\n" +
			"\u2022 Keypad\n\u2022 Winch",
			[]intake.Line{{Text: "Larkspur County", Head: true}, {Text: "Specifications for One Ambulance", Head: true},
				{Text: "Bid No. 27-014", Head: true}, {Text: "Opening: January 14, 2027 at 2:00 p.m.", Head: true},
				{Text: "PART ONE \u2013 GENERAL", Head: true}, {No: "1.1", Text: "Gasoline engine"},
				{Text: "Chassis", Head: true}, {No: "2.1", Text: "Wheelbase not longer than 160 inches"},
				{No: "2.2", Text: "Siren"}, {Text: "Patient Compartment", Head: true}, {Text: "Mats"}, {Text: "Hooks"},
				{Text: "Camera"}, {Text: "Keypad"}, {Text: "Winch"}}, 0},
		{"topics above blocks of lines, and nothing else", "Chassis\nAlternator 300 A\nInverter 1,000 " +
			"W\n\nPowered cot\nSiren",
			[]intake.Line{{Text: "Chassis", Head: true}, {Text: "Alternator 300 A"}, {Text: "Inverter 1,000 W"},
				{Text: "Powered cot"}, {Text: "Siren"}}, 0},
		{"what stands above the headings of a table",
			"County of Larkspur,\nItem No.,Specification Requirement,Comply (Y/N)\n7,\"Payload, 2,000 lb\",",
			[]intake.Line{{Text: "County of Larkspur", Head: true, Row: 1},
				{No: "7", Text: "Payload, 2,000 lb", Row: 3}}, 0},
		{"an empty cell where only the heading tells the bound",
			"Item No.,Maximum,Comply\n1,Curb weight of 11000 lb,\n2,,\n3,12500 lb of curb weight,",
			[]intake.Line{{No: "1", Text: "Curb weight of 11000 lb", Row: 2},
				{No: "3", Text: "Maximum 12500 lb of curb weight", Row: 4}}, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			list, err := intake.Read(c.text)
			require.NoError(t, err)
			assert.Equal(t, c.want, list.Lines)
			assert.Equal(t, c.left, list.Left)
		})
	}
}

// Nothing is lost: every word that was pasted stands in a line, but for numbers, bullets
// and what is told to be left out.
func TestNothingIsLost(t *testing.T) {
	text := "A. General\n  a) Seats for six, belted\n  b) Aisle\tof 20 in\nLast words without an end"
	list, err := intake.Read(text)
	require.NoError(t, err)
	var all []string
	for _, l := range list.Lines {
		all = append(all, l.No, l.Text)
	}
	for _, w := range strings.Fields(text) {
		assert.Contains(t, strings.Join(all, " "), strings.TrimSuffix(w, "."))
	}
}
