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
	{"bond", "Bid and performance bonds", "bid bond|performance bond|payment bond|bid security|surety|" +
		"bid deposit|bid guarantee|cashiers check|certified check|letter of credit|proposal guaranty|" +
		"bonding company|bid bonds|irrevocable letter|security deposit", ""},
	{"insurance", "Insurance", "liability insurance|liability coverage|workers compensation|" +
		"workmens compensation|certificate of insurance|certificates of insurance|additional insured|" +
		"insurance coverage|garage keepers|insurance certificate|umbrella coverage|automobile liability|" +
		"proof of insurance|policy of insurance|insurance policies|professional liability|product liability|" +
		"products liability", "insurance|insured|insurer"},
	{"addenda", "Addenda", "addenda|addendum", ""},
	{"damages", "Liquidated damages", "liquidated damages|deducted per|deducted from .. late|failure to deliver|" +
		"per calendar day|per day for|late delivery penalty|penalty of|delivery penalty|penalties for late|" +
		"late penalty|late charge|late delivery|late deliveries|days late|day late|late fee|" +
		"assessed for each|deduct .. per day|deducted for each|failure to deliver|" +
		"failure to meet .. delivery|day of delay|each day of delay",
		"penalty|penalties|per day for each|damages|day for|delay|delays|late"},
	{"payment", "Payment", "net 30|net thirty|net forty five|net sixty|net 45|net 60|net 15|net 10|down payment|" +
		"progress payment|progress payments|prepayment|prepay|accounts payable|invoices|invoice|invoicing|" +
		"terms of payment|payment terms|payment shall|payment will|partial payment|payable within|" +
		"early payment|final payment|retainage|within 30 days of acceptance|days after acceptance|" +
		"days of acceptance|days of receipt of|paid within|be paid|paid by check|paid upon|no deposit|" +
		"electronic funds|purchase card", "payment|payable|billing|billed|paid|pay"},
	{"references", "References", "references|names of .. using|names of .. departments|names of .. agencies|" +
		"similar units in|reference list|list of customers|list three customers|customer list|" +
		"reference contacts|references from|three references|five references|list last|list the last|" +
		"units sold|recent deliveries|similar deliveries",
		"list .. customers|customers .. phone|users of|previous purchasers|names and|phone numbers|" +
			"telephone numbers"},
	{"prebid", "Pre-bid meeting", "pre bid|prebid|pre proposal|preproposal|bidders conference|" +
		"site visit prior to bid", ""},
	{"meeting", "Meetings after award", "pre construction|preconstruction|preconstruction conference|" +
		"pre build conference|prebuild conference|progress meeting|kickoff meeting|kick off meeting|" +
		"weekly meetings|status meetings|conference call|teleconference",
		"conference|meetings|a meeting|meeting will|meeting shall|meeting at|construction meeting"},
	{"inspection", "Inspection trips", "inspection trip|inspection trips|inspection visit|inspection visits|" +
		"airfare|air fare|lodging|trips for|travel expenses|plant trip|factory trip|trip to the factory|" +
		"travel .. meals|invited to inspect|pays travel|pay travel|travel and lodging|travel costs|" +
		"all expenses|expenses for|expenses of|at vendors expense|at bidders expense|travel and meals|" +
		"visit plant|final inspection trip", "inspection .. expense|inspection .. plant|inspect .. plant|" +
		"trip|trips|at the factory|to the factory|inspect .. factory|visit .. factory"},
	{"indemnity", "Indemnity", "indemnify|indemnification|hold harmless|harmless|indemnity|save harmless|" +
		"defend and hold|claims arising|third party claims|patent infringement|infringement|" +
		"limitation of liability|consequential damages", ""},
	{"collusion", "Non-collusion", "collusion|non collusion|noncollusion|collusive", ""},
	{"tax", "Taxes", "sales tax|excise tax|tax exempt|exemption certificate|use tax|delinquent taxes|taxes|" +
		"tax exemption|exempt from tax|exempt from sales|federal excise|taxes shall|no taxes|" +
		"exempt certificate|tax number", "tax|exempt"},
	{"validity", "Validity of the price", "remain valid|pricing firm|pricing shall|pricing is|bids good for|" +
		"bid good for|bids are firm|good for 30 days|good for 60 days|good for 90 days|valid for|firm for|" +
		"firm through|prices firm|price firm|prices shall be firm|price shall be firm|prices shall remain|" +
		"remain firm|held firm|hold prices|price escalation|escalation|withdrawn|withdraw|remain open for|" +
		"prices quoted|prices held|price held|prices held|hold the price|hold its price|hold their price|" +
		"hold pricing|price hold|remain binding|binding for|irrevocable|offer shall remain|" +
		"offers shall remain|price increase|price increases|price adjustment|price adjustments|" +
		"price guarantee|prices guaranteed|tariff|tariffs|material surcharge|prices are guaranteed|" +
		"price guaranteed|firm price for|price protection|firm for",
		"firm price|price .. days|prices .. days|pricing .. days|offer .. days"},
	{"quantities", "Quantities and renewals", "purchase additional|additional units|bid quantity|" +
		"option to purchase|contract term|renewal|renewals|order one or|may order|quantity may|quantities|" +
		"initial term|option years|option year|estimated quantities|minimum order|no guarantee of quantity|" +
		"term of this agreement|two year term|three year term|one year term|multi year|additional one year|" +
		"extended for", "term of contract|extend the contract|renew|be renewed|buy one|buy additional|buy more|" +
		"may purchase|may buy"},
	{"award", "Award", "award will|award based|award is|award shall|award to|award of|basis for award|" +
		"lowest responsive|responsible bidder|reject any|reject all|waive|evaluation criteria|" +
		"local preference|preference of|lowest price|appropriation|bid tabulation|tabulation|" +
		"disadvantaged business|minority|small business|best interest|award the|awarded|multiple awards|" +
		"bid results|low bidder|non appropriation|subject to approval|membership must approve|board approval|" +
		"council approval|approval by the board|approval of the board|governing body|approved by the board|" +
		"approval by the membership|city council|county commission|board of trustees|all or none|best value|" +
		"evaluated on|evaluation committee|scoring|points will be|line item basis|item by item|apparent low|" +
		"intent to award|notice of award|lowest and best|in whole or in part|informalities|irregularities",
		"evaluated|evaluation|tie bids|lowest"},
	{"cancellation", "Cancellation", "cancel the|termination|terminate|cancellation|written notice .. cancel|" +
		"default by|terminated|for convenience|for cause|in default|in breach|may cancel|right to cancel|" +
		"cancel this|be cancelled|be canceled|cancelled without|canceled without|notice of termination",
		"cancel|cancelled|canceled"},
	{"law", "Governing law", "governed by|venue|jurisdiction|laws of the|applicable laws|state and local laws|" +
		"force majeure|acts of god|severability|dispute|arbitration|mediation|all applicable federal|court|" +
		"statute|statutes|ordinance|ordinances|attorneys fees|uniform commercial code|prevailing party|" +
		"attorney fees|attorney s fees|legal fees|state law|federal law|laws and regulations|governing law|" +
		"litigation|lawsuit|claims shall be|circuit court|district court",
		"laws|law|disputes|courts|ordinance"},
	{"records", "Records and public access", "public record|public records|audit by|permit audit|" +
		"freedom of information|confidential|proprietary information|trade secret|books and records|" +
		"keep records|retain records|right to audit|usage report|usage reports|sales report|sales reports|" +
		"quarterly report|quarterly reports|audits|audit of|open records|comptroller|retained for|" +
		"nondisclosure|non disclosure|disclosure of|business associate agreement|hipaa|" +
		"protected health information|available for audit|available for inspection and audit", ""},
	{"debarment", "Debarment and sanctions", "debarred|debarment|suspended from|sanctions|boycott|anti boycott|" +
		"excluded parties|federal funds|certifies that it does not|excluded from participation|" +
		"exclusion list|foreign terrorist|human trafficking|conflict minerals|israel|federal health care|" +
		"suspension list", ""},
	{"employment", "Employment and workplace", "equal employment|employment opportunity|drug free|e verify|" +
		"prevailing wage|davis bacon|nondiscrimination|non discrimination|discrimination|affirmative action|" +
		"minimum wage|living wage|background check|americans with disabilities|background check|" +
		"background checks|criminal history|background screening|credentialing|security clearance|" +
		"undocumented|immigration|drug testing|workers on|employees of the contractor|harassment", ""},
	{"license", "Licenses and registration of the bidder", "dealer license|dealers license|motor vehicle dealer|" +
		"business license|vendor registration|licensed dealer|license to sell|vendor number|" +
		"registered with the state|contractor license|registered vendor|registered in the|registered on|" +
		"registered vendors|vendor portal|authorized to do business|authorized to transact|good standing|" +
		"certificate of authority|state license to sell|dealership license", "registered|licensed"},
	{"quality", "Quality system of the maker", "iso 9001|iso 9000|iso certified|iso registered|quality system|" +
		"quality management|quality assurance program|quality control program", "iso"},
	{"experience", "Experience of the bidder", "have been building|been building|been in business|" +
		"in business for|years experience|years of experience|have sold|sold at least|financial statements|" +
		"financial statement|units of like kind|built at least|manufactured at least|have manufactured|" +
		"have produced|years in|financial stability|number of employees|company history|resume|" +
		"years in business|number of units built|units in service|company profile|previously built|" +
		"demonstrated experience|proven experience|single source|sole source|engaged in the",
		"experience|experienced|ownership|in business|business .. years"},
	{"service", "Service and parts", "service facility|service center|parts and service|replacement parts|" +
		"parts availability|parts shall be available|warranty repairs|warranty repair|warranty work|" +
		"warranty administrator|loaner|service technicians|authorized service|repair facility|mobile service|" +
		"service representative|nearest service|parts warehouse|toll free|parts shall be stocked|" +
		"parts stocked|stock parts|parts within|overnight parts|technical support|help line|hotline|hot line|" +
		"response time|factory trained|certified technicians|recall notices|safety recalls|" +
		"service department hours|service personnel|emergency vehicle technician",
		"shop in|have shop|within .. miles of the|parts .. available|technician .. hours|service .. miles|" +
			"service shop|service department|repair shop|service location"},
	{"title", "Title and registration", "statement of origin|certificate of origin|mso|title application|" +
		"title fees|title and registration|registration and title|registration fees|license plates|" +
		"temporary tag|title work", ""},
	{"prices", "Form of the prices", "itemized price|itemized pricing|unit price shall|price sheet|pricing page|" +
		"price breakdown|cost breakdown|lump sum|bid form|prices shall include|price must include", ""},
	{"submission", "Submitting the bid", "sealed bid|sealed bids|sealed envelope|sealed proposals|original and|" +
		"copies in|late bids|bids received|will be received|faxed|e mailed|emailed bids|bid opening|" +
		"cost of preparing|costs of preparing|w 9|w9|compliance checklist|complete the attached|" +
		"attached checklist|attached form|submit one|submitted in|returned with|bids must be|" +
		"bids shall be submitted|electronic bid|proposal page|notarized|table of contents|tabbed|envelope|" +
		"by fax|bids by fax|fax bids|email bids|e mail bids|public opening|opened publicly|publicly opened|" +
		"bid .. opening at|bids .. opening at|proposals .. opening at|due date|deadline|no later than .. bid|hard copy|hard copies|" +
		"flash drive containing|" +
		"procurement portal|portal|bids opened|bids will be opened|bids are opened|unopened|opened by|" +
		"read aloud|upload|uploaded|hand delivered|in duplicate|in triplicate|copies of the bid|" +
		"copies of the proposal|bid number|bid packet|bid package|signed form|form shall be completed|" +
		"pages must|responses must|responses shall|ink|typewritten|response sheet",
		"rejection|rejected|submittal|submitted with|submit|deadline|submitted|copies|copy of the bid"},
	{"questions", "Questions and clarifications", "questions must|questions shall|questions regarding|" +
		"request for information|oral statements|oral interpretation|written questions|" +
		"requests for clarification|interpretations|written inquiries|inquiries|clarifications must|verbal|" +
		"request for clarification", "questions"},
	{"protest", "Protests", "protest|protests|appeal", ""},
	{"assignment", "Assignment and subcontracting", "assigned or|be assigned|assigned without|subcontracted|" +
		"subcontract|subcontractor|subcontractors|assign this|assignment of|may not be assigned|sublet|" +
		"transfer this|transfer the contract|subcontracting|sublet|assign the contract|assign its", ""},
	{"cooperative", "Cooperative purchasing", "piggyback|piggy back|cooperative purchase|cooperative purchasing|" +
		"other public agencies|other agencies|interlocal|political subdivisions|participating agencies|" +
		"may order from this|other entities|other municipalities|purchasing cooperative|neighboring agencies|" +
		"eligible users", ""},
	{"conflict", "Conflict of interest", "conflict of interest|conflicts of interest|interest in your firm|" +
		"gratuities|gratuity|code of ethics|lobbying|campaign contributions|financial relationship|" +
		"financial interest|employee of the .. interest|board member|elected official|elected officials|" +
		"kickback|kickbacks", ""},
	{"finance", "Financing and leasing", "lease purchase|lease to own|municipal lease|lease agreement|financing|" +
		"lease rate|interest rate|finance plan", "lease|leasing|finance|financed"},
	{"origin", "Domestic content", "buy american|buy america|made in america|made in the united states|" +
		"domestic content|country of origin|american made|domestically produced|made in the usa", ""},
	{"signature", "Signature and authority", "signed by an|authorized to bind|authorized signature|signature of|" +
		"authorized representative|bind the company|authorized officer|binding signature|signed in ink|" +
		"original signature|notary|sworn|affidavit|corporate seal",
		"signature|signed|must sign|shall sign|sign page|sign the|sign and"},
	{"exceptions", "Listing of exceptions", "exceptions shall|exceptions must|take exception|taking exception|" +
		"all exceptions|list exceptions|deviations shall|deviations must|any deviation|any exception|" +
		"full compliance|exceptions to", "exceptions|deviations"},
	{"equals", "Brand names and equals", "or equal products|brand names|brand name|burden of proof|equals will|" +
		"trade names|approved equals|no substitute", ""},
	{"literature", "Literature, drawings and samples", "descriptive literature|product literature|brochures|" +
		"brochure|drawings to scale|detailed drawings|scale drawings|scaled drawings|approval drawings|" +
		"shop drawings|drawings shall be|set of drawings|sets of drawings|samples of|blueprint|blueprints|" +
		"floor plan shall|proposal drawings|drawings .. submitted|spec sheets|specification sheets|" +
		"cut sheets|catalog sheets|data sheets .. submitted|manufacturers literature|submit drawings|" +
		"drawings with the bid|with the bid|with their bid|with its bid", "literature|samples"},
	{"acceptance", "Acceptance", "accept or reject|final acceptance|acceptance testing|days to inspect|" +
		"acceptance of the vehicle|acceptance inspection|upon acceptance|reject the vehicle|reject the unit|" +
		"right to reject|days after delivery to inspect|until accepted|accepted in writing|acceptance by the|" +
		"acceptance will|prior to acceptance|before taking delivery|refuse delivery|refused|" +
		"before acceptance", "acceptance"},
	{"delivery", "Terms of delivery", "time is of the essence|fob|free on board|freight prepaid|freight|" +
		"risk of loss|title passes|prepaid and allowed|delivery hours|notice before delivery|" +
		"delivery charges|destination charges|prepaid|shipping charges|shipping costs|delivery appointment|" +
		"damage in transit|at no additional freight|notify .. before delivery", ""},
	{"tradein", "Trade-in", "trade in|trade ins|trade allowance|traded in|trade value|trade allowance|" +
		"as is condition|trade unit|trade vehicle|trade credit", ""},
	{"changes", "Changes to the order", "change order|change orders|changes must be|changes to the specification|" +
		"written approval|approved in writing", ""},
	{"fees", "Contract fees", "administrative fee|administration fee|admin fee|contract fee|usage fee|rebate|" +
		"surcharge|surcharges|fuel surcharge|document fee|documentation fee|processing fee|transaction fee",
		"fee|fees"},
	{"demonstration", "Demonstration unit", "demonstration unit|demo unit|demonstrator|demonstration vehicle|" +
		"be demonstrated|demonstrate a|demonstration at", ""},
	{"contact", "Contact persons", "point of contact|contact person|project manager|account manager|" +
		"account representative|sales representative", ""},
	{"purchaser", "What the purchaser reserves or does",
		"reserves the right|sole discretion|sole judge|sole option",
		"the city will|the district will|the county will|the state will|the hospital will|the department will|" +
			"the town will|the company will|the agency will|the purchaser will|the buyer will|the owner will|" +
			"the city may|the county may|the district may|the state may|the purchaser may|at its option|" +
			"orders shall be placed|orders will be placed|will not pay"},
	{general, "Other terms of the bid", "", ""},
	{"information", "Information asked of the bidder", "", "provide a list|list all|state the|shall be stated|" +
		"attach a|enclose|explain how|please describe|describe in|indicate the|describe your|list your|" +
		"please list|specify in"},
	{"bidder", "About the bidder", "", "the bid|this bid|bids|bid shall|bid must|bidders are|proposals|proposer|" +
		"the contractor|the vendor|bidder is|bidder will|bidder must|contract shall|contract will|" +
		"contract may|no contract|bidder shall state|bidders shall state|bidder must state|bidder shall list|" +
		"bidder shall submit|bidders shall submit|bidder shall describe|bidder to describe|successful bidder|" +
		"bidder shall certify|contractor shall certify|bidder certifies|bidder affirms|vendor affirms|" +
		"this contract|the contract|this agreement|the agreement|agreement|contract documents|bid documents|" +
		"solicitation|the offer|offeror|offerors|this rfp|bidder certifies|vendor certifies|" +
		"contractor certifies|contractor agrees|vendor agrees|bidder agrees|vendors must|vendors shall|" +
		"winning bidder|winning vendor|selected vendor|selected bidder|awarded vendor|awarded contractor|" +
		"procurement|purchasing department|purchasing agent|purchase order|contracting officer|bid price|" +
		"your bid|any bid|each bid|every bid|no bid|bid is|bid will|bid may|all bids|builders cost|" +
		"at no cost to the"},
}

// general is the kind of what sounds like a term and is none of the others.
const general = "general"

// commercial are words of terms that no requirement of a unit needs.
var commercial = func() map[string]bool {
	out := map[string]bool{}
	for _, w := range strings.Fields(`bid bids bidder bidders bidding proposal proposals proposer contract contracts
contractor agreement invoice invoices award awarded consent disputes taxes fee fees lease leasing purchase purchases
purchasing price prices pricing priced payment payments pay pays paid funds funding money budgeted vote votes council
commission commissioners committee trustees membership attorney insurance insured bond bonds bonded penalty penalties
protest signature signatures signed notarized affidavit affidavits submittal submittals deadline opened unopened audit
audits subcontract subcontracting gratuities gratuity employee employees references customers dealership demo trade
vendor vendors solicitation procurement rebate refund refunds deposit ethics lobbying copies sealed quote quotes
quotation quotations liable liability warrants responsive faxed emailed lawsuit bankruptcy certify certifies`) {
		out[w] = true
	}
	return out
}()

// General is the kind of a line that was read as nothing of the unit and speaks of
// business; empty when it does not, or asks something of the unit.
func General(text string) string {
	words := strings.Fields(flat(mainClause(text)))
	if slices.ContainsFunc(words, business) && !ofUnit(words) {
		return general
	}
	return ""
}

func business(word string) bool { return commercial[word] }

// ofUnit reports whether a sentence is about what the unit is to do or be.
func ofUnit(words []string) bool {
	at := slices.IndexFunc(words, func(w string) bool { return orders[w] })
	return at > 0 && units[words[at-1]] || slices.ContainsFunc(words, func(w string) bool { return opening[w] })
}

var (
	units = map[string]bool{"unit": true, "vehicle": true, "ambulance": true, "module": true, "chassis": true}
	// opening are parts of a unit that are opened, as bids are
	opening = map[string]bool{"door": true, "doors": true, "window": true, "windows": true, "hatch": true, "lid": true,
		"drawer": true, "drawers": true, "compartment": true, "compartments": true}
	orders = map[string]bool{"shall": true, "must": true, "will": true, "to": true}
)

// mainClause is what a line orders, without what follows behind a comma or semicolon:
// latches that hold so much do not become a term because a report of it is to be submitted.
// It is the whole line where what stands before orders nothing, or is the bidder's business.
func mainClause(text string) string {
	i := strings.IndexAny(text, ",;")
	if i < 0 {
		return text
	}
	words := strings.Fields(flat(text[:i]))
	if !slices.ContainsFunc(words, func(w string) bool { return orders[w] }) || slices.ContainsFunc(words, business) {
		return text
	}
	return text[:i]
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
	if id, strong = find(text); id != "" && !strong {
		id, strong = find(mainClause(text))
	}
	return id, strong
}

func find(text string) (id string, strong bool) {
	line := strings.ReplaceAll(flat(text), "key fob", "keyfob") // no price F.O.B.
	spaced, best := " "+line+" ", len(ready)*len(Kinds)
	for _, w := range strings.Fields(line) {
		for _, p := range byFirst[w] {
			if p.rank < best && holds(spaced, p.parts) {
				best = p.rank
			}
		}
	}
	if best == len(ready)*len(Kinds) {
		return "", false
	}
	return Kinds[best%len(Kinds)].ID, best < len(Kinds)
}

// phrase is one of a kind, by its parts with a space around each. Its rank is the place of
// its kind in the order in which they are tried, the strong ones before the weak.
type phrase struct {
	rank  int
	parts []string
}

// byFirst are the phrases of all kinds by the first word of each.
var byFirst = func() map[string][]phrase {
	out := map[string][]phrase{}
	for n, list := range ready {
		for i, phrases := range list {
			for _, parts := range phrases {
				first := strings.Fields(parts[0])[0]
				out[first] = append(out[first], phrase{n*len(Kinds) + i, parts})
			}
		}
	}
	return out
}()

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

// holds reports whether a line has all parts of a phrase.
func holds(line string, parts []string) bool {
	return !slices.ContainsFunc(parts, func(part string) bool { return !strings.Contains(line, part) })
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
