package link

// dictionary1 holds what most drafts have in common, the most common last. It
// belongs to version 1 for good: changing a byte of it would make every link
// ever sent unreadable.
const dictionary1 = `"notes":"","occupant_lb":175,"patient_lb":175,"payload_lb":"own":[{"figure":"value":` +
	`Ambulance Fire Rescue County Emergency Medical Services Department Street Avenue @example.com , Type III-AD cutaway 4x2 gasoline diesel in wheelbase module in headroom` +
	`"discount":{"percent":"amount":"0.00","miles":"tax":{"rate":"exempt":true,"certificate":"trade_in":"prepay":"contract":"needed_by":"2027-` +
	`{"q":{"format":"boxwright-quote/1","number":"","rev":0,"date":"2026-11-25","title":"","seller":{"name":"","person":"","address":"","reach":""},"buyer":{"name":"","person":"","address":"","reach":""},` +
	`"unit":{"catalogue":"","edition":"","chassis":"","body":"","picks":null,"rule_set":"kkk-a-1822f","order_on":"2026-11-25"},"terms":{}},` +
	`"f":{"e":"demo 2026-11","c":"Cutaway 14,500 lb, 158 in wheelbase","b":"Module 146 in, 68 in headroom","t":"USD 300,000.00","d":"2027-05-03","p":400}}`
