// Package terms recognizes the lines of a requirement list that are terms of the bid
// and not about the unit, and says what they are about.
package terms

import (
	"slices"
	"strings"
)

// Kind of a term.
type Kind struct {
	ID, Name string
	strong   string // phrases by which a line is such a term whatever else it holds, parted by |
	weak     string // phrases by which it is one when it was not read as about the unit
}

// Kinds in the order they are tried. A phrase is words that stand together; " .. "
// between parts of one means that both are in the line.
var Kinds = []Kind{
	{"bond", "Bid and performance bonds", "bid bond|performance bond|payment bond|bid security|surety|bid deposit|bid guarantee|cashiers check|certified check|letter of credit|proposal guaranty", ""},
	{"insurance", "Insurance", "liability insurance|liability coverage|workers compensation|workmens compensation|certificate of insurance|certificates of insurance|additional insured|insurance coverage|garage keepers|insurance certificate|umbrella coverage", "insurance|insured|insurer"},
	{"addenda", "Addenda", "addenda|addendum", ""},
	{"damages", "Liquidated damages", "liquidated damages|deducted per|deducted from .. late|failure to deliver|per calendar day|per day for|late delivery penalty|penalty of|delivery penalty|penalties for late|late penalty|late charge", "penalty|penalties|per day for each|damages"},
	{"payment", "Payment", "net 30|net thirty|net forty five|net sixty|net 45|net 60|net 15|net 10|down payment|progress payment|progress payments|prepayment|prepay|accounts payable|invoices|invoice|invoicing|terms of payment|payment terms|payment shall|payment will|partial payment|payable within|early payment|final payment|retainage", "payment|payable|billing|billed"},
	{"references", "References", "references|names of .. using|names of .. departments|names of .. agencies|similar units in|reference list|list of customers|list three customers|customer list", "list .. customers|customers .. phone|users of|previous purchasers"},
	{"prebid", "Pre-bid meeting", "pre bid|prebid|pre proposal|preproposal|bidders conference", ""},
	{"meeting", "Meetings after award", "pre construction|preconstruction|preconstruction conference|pre build conference|prebuild conference|progress meeting|kickoff meeting|kick off meeting", "conference|meetings|a meeting|meeting will|meeting shall|meeting at|construction meeting"},
	{"inspection", "Inspection trips", "inspection trip|inspection trips|inspection visit|inspection visits|airfare|air fare|lodging|trips for|travel expenses|plant trip|factory trip|trip to the factory|travel .. meals", "inspection .. expense|inspection .. plant|inspect .. plant|trip|trips"},
	{"indemnity", "Indemnity", "indemnify|indemnification|hold harmless|harmless|indemnity", ""},
	{"collusion", "Non-collusion", "collusion|non collusion|noncollusion|collusive", ""},
	{"tax", "Taxes", "sales tax|excise tax|tax exempt|exemption certificate|use tax|delinquent taxes|taxes", "tax|exempt"},
	{"validity", "Validity of the price", "remain valid|pricing firm|pricing shall|pricing is|bids good for|bid good for|bids are firm|good for 30 days|good for 60 days|good for 90 days|valid for|firm for|firm through|prices firm|price firm|prices shall be firm|price shall be firm|prices shall remain|remain firm|held firm|hold prices|price escalation|escalation|withdrawn|withdraw|remain open for|prices quoted|prices held", "firm price"},
	{"quantities", "Quantities and renewals", "purchase additional|additional units|bid quantity|option to purchase|contract term|renewal|renewals|order one or|may order|quantity may|quantities", "term of contract|extend the contract"},
	{"award", "Award", "award will|award based|award is|award shall|award to|award of|basis for award|lowest responsive|responsible bidder|reject any|reject all|waive|evaluation criteria|local preference|preference of|lowest price|appropriation|bid tabulation|tabulation|disadvantaged business|minority|small business|best interest|award the|awarded|multiple awards|bid results|low bidder|non appropriation", "evaluated|evaluation"},
	{"cancellation", "Cancellation", "cancel the|termination|terminate|cancellation|written notice .. cancel|default by", ""},
	{"law", "Governing law", "governed by|venue|jurisdiction|laws of the|applicable laws|state and local laws|force majeure|acts of god|severability|dispute|arbitration|mediation|all applicable federal|court|statute|statutes|ordinance|ordinances|attorneys fees|uniform commercial code", "laws|law"},
	{"records", "Records and public access", "public record|public records|audit by|permit audit|freedom of information|confidential|proprietary information|trade secret|books and records|keep records|retain records|right to audit", ""},
	{"debarment", "Debarment and sanctions", "debarred|debarment|suspended from|sanctions|boycott|anti boycott|excluded parties|federal funds", ""},
	{"employment", "Employment and workplace", "equal employment|employment opportunity|drug free|e verify|prevailing wage|davis bacon|nondiscrimination|non discrimination|discrimination|affirmative action|minimum wage|living wage|background check|americans with disabilities", ""},
	{"license", "Licenses and registration of the bidder", "dealer license|dealers license|motor vehicle dealer|business license|vendor registration|licensed dealer|license to sell|vendor number|registered with the state|contractor license", ""},
	{"quality", "Quality system of the maker", "iso 9001|iso 9000|iso certified|iso registered|quality system|quality management|quality assurance program|quality control program", "iso"},
	{"experience", "Experience of the bidder", "have been building|been building|been in business|in business for|years experience|years of experience|have sold|sold at least|financial statements|financial statement|units of like kind|built at least|manufactured at least|have manufactured|have produced|years in|financial stability|number of employees|company history|resume", "experience|experienced|ownership"},
	{"service", "Service and parts", "service facility|service center|parts and service|replacement parts|parts availability|parts shall be available|warranty repairs|warranty repair|warranty work|warranty administrator|loaner|service technicians|authorized service|repair facility|mobile service|service representative|nearest service|parts warehouse|toll free", "within .. miles of the|parts .. available|technician .. hours|service .. miles"},
	{"title", "Title and registration", "statement of origin|certificate of origin|mso|title application|title fees|title and registration|registration and title|registration fees|license plates|temporary tag|title work", ""},
	{"prices", "Form of the prices", "itemized price|itemized pricing|unit price shall|price sheet|pricing page|price breakdown|cost breakdown|lump sum|bid form|prices shall include|price must include", ""},
	{"submission", "Submitting the bid", "sealed bid|sealed bids|sealed envelope|sealed proposals|original and|copies in|late bids|bids received|will be received|faxed|e mailed|emailed bids|bid opening|cost of preparing|costs of preparing|w 9|w9|compliance checklist|complete the attached|attached checklist|attached form|submit one|submitted in|returned with|bids must be|bids shall be submitted|electronic bid|proposal page|notarized|table of contents|tabbed", "rejection|rejected|submittal|submitted with|submit"},
	{"questions", "Questions and clarifications", "questions must|questions shall|questions regarding|request for information|oral statements|oral interpretation|written questions|requests for clarification|interpretations", "questions"},
	{"protest", "Protests", "protest|protests|appeal", ""},
	{"assignment", "Assignment and subcontracting", "assigned or|be assigned|assigned without|subcontracted|subcontract|subcontractor|subcontractors|assign this|assignment of|may not be assigned|sublet", ""},
	{"cooperative", "Cooperative purchasing", "piggyback|piggy back|cooperative purchase|cooperative purchasing|other public agencies|other agencies|interlocal", ""},
	{"conflict", "Conflict of interest", "conflict of interest|conflicts of interest|interest in your firm|gratuities|gratuity|code of ethics|lobbying|campaign contributions", ""},
	{"signature", "Signature and authority", "signed by an|authorized to bind|authorized signature|signature of|authorized representative|bind the company|authorized officer", "signature|signed"},
	{"exceptions", "Listing of exceptions", "exceptions shall|exceptions must|take exception|taking exception|all exceptions|list exceptions|deviations shall|deviations must|any deviation|any exception|full compliance|exceptions to", "exceptions|deviations"},
	{"equals", "Brand names and equals", "or equal products|brand names|brand name|burden of proof|equals will|trade names|approved equals|no substitute", ""},
	{"literature", "Literature, drawings and samples", "descriptive literature|product literature|brochures|brochure|drawings to scale|detailed drawings|scale drawings|scaled drawings|approval drawings|shop drawings|drawings shall be|set of drawings|sets of drawings|samples of|blueprint|blueprints|floor plan shall|proposal drawings|drawings .. submitted", "literature|samples"},
	{"acceptance", "Acceptance", "accept or reject|final acceptance|acceptance testing|days to inspect|acceptance of the vehicle|acceptance inspection|upon acceptance", "acceptance"},
	{"delivery", "Terms of delivery", "time is of the essence|fob|free on board|freight prepaid|freight|risk of loss|title passes|prepaid and allowed|delivery hours|notice before delivery|delivery charges", ""},
	{"tradein", "Trade-in", "trade in|trade ins|trade allowance|traded in|trade value", ""},
	{"changes", "Changes to the order", "change order|change orders|changes must be|changes to the specification|written approval|approved in writing", ""},
	{"bidder", "About the bidder", "", "the bid|this bid|bids|bid shall|bid must|bidders are|proposals|proposer|the contractor|the vendor|bidder is|bidder will|bidder must|contract shall|contract will|contract may|no contract|bidder shall state|bidders shall state|bidder must state|bidder shall list|bidder shall submit|bidders shall submit|bidder shall describe|bidder to describe|successful bidder|bidder shall certify|contractor shall certify|bidder certifies|bidder affirms|vendor affirms|this contract|the contract"},
}

// Name is a kind's name; the id itself when there is no such kind.
func Name(id string) string {
	for i := range Kinds {
		if Kinds[i].ID == id {
			return Kinds[i].Name
		}
	}
	return id
}

// Known reports whether there is a kind with an id.
func Known(id string) bool {
	return slices.ContainsFunc(Kinds, func(k Kind) bool { return k.ID == id })
}

// Of is the kind of term a line is; strong where it is that whatever else it holds.
// Empty when it is none.
func Of(text string) (id string, strong bool) {
	line := " " + flat(text) + " "
	for n, list := range ready {
		for i, phrases := range list {
			if holds(line, phrases) {
				return Kinds[i].ID, n == 0
			}
		}
	}
	return "", false
}

// ready are the phrases of the kinds, each in its parts with a space around it.
var ready = func() (out [2][][][]string) {
	for _, k := range Kinds {
		for i, phrases := range []string{k.strong, k.weak} {
			var list [][]string
			for _, p := range strings.Split(phrases, "|") {
				if p == "" {
					continue
				}
				var parts []string
				for _, part := range strings.Split(p, " .. ") {
					parts = append(parts, " "+part+" ")
				}
				list = append(list, parts)
			}
			out[i] = append(out[i], list)
		}
	}
	return out
}()

// holds reports whether a line has all parts of one of the phrases.
func holds(line string, phrases [][]string) bool {
	return slices.ContainsFunc(phrases, func(parts []string) bool {
		return !slices.ContainsFunc(parts, func(part string) bool { return !strings.Contains(line, part) })
	})
}

// flat is a line in small letters, its words parted by single spaces.
func flat(text string) string {
	var b strings.Builder
	space := false
	for _, r := range strings.ToLower(text) {
		switch {
		case r >= 'a' && r <= 'z' || r >= '0' && r <= '9':
			if space && b.Len() > 0 {
				b.WriteByte(' ')
			}
			b.WriteRune(r)
			space = false
		case r == '\'' || r == '\u2019' || r == '.' || r == ',':
			// "driver's" and "F.O.B." are one word
			if r == ',' {
				space = true
			}
		default:
			space = true
		}
	}
	return b.String()
}
