package link

// dictionary2 is the preset dictionary of the text's compression: words of the
// trade, and drafts as they usually are. What is most likely stands last, where it
// costs least. It belongs to content version 2 for good: changing a byte of it
// would make every link of that version unreadable. People and places in it are
// invented.
const dictionary2 = `the first second third order this year next last with without from before after until within thirty ` +
	`sixty days of delivery as agreed by and for to follow supplied fitted mounted lettering drawing ` +
	`approved included customer department's own radio radios equipment installed here at our station ` +
	`handed over old unit new units replaces trade-in miles condition sold as is certificate number ` +
	`purchase order contract bid request approved board council. Please Call The To be Per our ` +
	`Fire Department Rescue Squad Volunteer District Authority Hospital University Medical Center ` +
	`Regional Health System Township Village City of Town of County of North South East West Saint Lake ` +
	`River Creek Hill Valley Springs Grove Park Ridge Harbor Falls Bend Mill Bridge Highway Route Road ` +
	`Avenue Boulevard Lane Drive Court Square Depot Station Courthouse Market Church Washington Lincoln ` +
	`Jefferson Franklin Madison Monroe Main Street, First Street, Second Street, Oak Street, Elm Street, ` +
	`Box 12, Suite 200, ` +
	`John James Robert Michael William David Richard Thomas Daniel Mark Paul Steven Andrew Kevin Brian ` +
	`Maria Anna Mary Linda Susan Karen Laura Sarah Rachel Smith Johnson Brown Miller Davis Wilson ` +
	`Anderson Taylor Martin Thompson Garcia Martinez Captain Lieutenant Director Deputy Chief Manager ` +
	`Battalion Medic Engine Squad Ambulance Rescue Unit 12 Medic 7 Ambulance 3 January February March ` +
	`April May June July August September October November December ` +
	`Dealer Distributor Sales Emergency Vehicles Equipment Specialty Vehicle Group Company Inc. LLC ` +
	`AMBULANCE FIRE RESCUE COUNTY CITY MEDIC dark blue, white, red, yellow, black, gold, silver, green ` +
	`"existing":{"maker":"","built":2012,"length_in":152,"width_in":95,"height_in":90,"headroom_in":72,` +
	`"aisle_in":46,"mass_lb":4200,"tol_lb":100,"weighed":"x_in":"y_in":"z_in":,"estimated":true,` +
	`"warranty_years":10,"notes":""}` +
	`"milestones":[{"id":"","label":"At the order","percent":"30"},{"id":"","label":"At delivery",` +
	`"percent":"70"}],"lease":{"principal":"","rate":"5","per_year":12,"periods":60,"advance":true,` +
	`"balloon":"","label":"","first_due":1},"service":{"rates":{"inflation":"3","discount":"4"},` +
	`"this":{"id":"","label":"This unit","price":"0.00","trade_in":"0.00","years":10,"yearly":"12000.00",` +
	`"ageing":"4","residual":"20000.00","warranty":5,"later":[{"year":1,"amount":"","label":""}]},` +
	`"others":[]}` +
	`"at":1,"more":[{"label":"Reserve","units":2,"unit":{"catalogue":"","edition":"","chassis":"",` +
	`"body":"","picks":null,"rule_set":"kkk-a-1822f","order_on":"2026-11-25"}}],` +
	`"tickets":[{"date":"2027-05-20","number":"A-1","what":"unit","condition":"curb",` +
	`"condition":"crewed","condition":"gross","fuel_part":0.5,"total_lb":11200,"front_lb":4100,` +
	`"rear_lb":7100,"left_lb":5500,"right_lb":5600,"wheels_lb":[2000,2050,3500,3600],"tol_lb":20}],` +
	`"wiring":{"areas":"awg","drop_pct":3,"critical_pct":1},` +
	`"requirements":[{"no":"1","text":"The unit shall be have ","pick":"","verdict":"meets","answer":""},` +
	`{"no":"2","text":"","verdict":"exception"}],"readings":[{"check":"","value":1}],"prev":"",` +
	`"proposed":["",""],"more":[` +
	`"contract":"state-list","use":"rescue","use":"ambulance","discount_amount":"1500.00",` +
	`"prepay":"chassis-on-arrival","prepay_days":90,"training_days":"2","fees":["scale-ticket",` +
	`"inspection-trip"],"tax_rate":"6","deposit_amount":"","deposit_percent":"10",` +
	`{"q":{"format":"boxwright-quote/1","number":"","rev":0,"date":"2026-11-25","title":"","seller":{},` +
	`"buyer":{},"unit":{"catalogue":"","edition":"","chassis":"","body":"","picks":null,` +
	`"rule_set":"kkk-a-1822f","order_on":"2026-11-25"},"terms":{}},"f":{"e":"demo 2026-11",` +
	`"c":"Cab-chassis 16,500 lb, 169 in wheelbase, diesel","b":"Module 164 in long, 74 in headroom",` +
	`"t":"USD 640,912.50","u":"2027-02-01","d":"2027-10-08","p":980}}` +
	`{"q":{"format":"boxwright-quote/1","number":"26-0417","rev":1,"date":"2026-12-03",` +
	`"title":"Ambulance 5","seller":{"name":"Northern Emergency Vehicles","person":"Paul Anderson",` +
	`"address":"100 Market Street, Grand Falls","reach":"(605) 555-0134 sales@northern.example"},` +
	`"buyer":{"name":"Lake County Fire and Rescue Ambulance Service","person":"Chief Maria Thompson",` +
	`"address":"20 Washington Avenue, Springfield","reach":"chief@lakecounty.example"},"notes":"Old unit ` +
	`to be handed over at delivery.","unit":{"catalogue":"","edition":"","chassis":"","body":"",` +
	`"picks":null,"details":[{"option":"let-plain","text":"COUNTY AMBULANCE, blue"},` +
	`{"option":"paint-colour","text":"White"},{"option":"mrk-unit-number","text":"5"},` +
	`{"option":"str-belt","text":"Blue"}],"rule_set":"kkk-a-1822f","occupant_lb":175,"patient_lb":175,` +
	`"payload_lb":1500,"own":[{"figure":"weight.payload","value":1500},{"figure":"power.idle",` +
	`"value":20},{"figure":"space.storage","value":30},{"figure":"space.headroom","value":72}],` +
	`"order_on":"2026-12-10","needed_by":"2027-09-30"},"terms":{"units":2,"contract":"coop-plains",` +
	`"discount_percent":"1","discount_reason":"Agreed by the sales manager",` +
	`"prepay":"chassis-with-order","trade_in":"12000.00","trade_in_text":"2012 unit 3, 150,000 miles",` +
	`"freight_miles":"300","extras":[{"label":"Radio, supplied and fitted","qty":2,"price":"2400.00"},` +
	`{"label":"Lettering","price":"950.00","untaxed":true}],"tax_exempt":true,"exempt_reason":"Public ` +
	`service, certificate 12-3456","bond":true,"validity_days":60,"budget":"350000.00"},` +
	`"needs":{"duty":"bls","duty":"critical","duty":"neonatal","duty":"multi","duty":"rescue",` +
	`"duty":"hazmat","duty":"als","roads":"paved","roads":"gravel","roads":"snow","climate":"temperate",` +
	`"climate":"hot","climate":"cold","type":"I","type":"III","fuel":"diesel","fuel":"gasoline","crew":4,` +
	`"patients":1,"must":["cot-power","siren-200"],"like":["o2-m2","cam-rear"]}},"f":{"e":"demo 2026-11",` +
	`"c":"Cutaway 14,500 lb, 158 in wheelbase, gasoline","b":"Module 146 in long, 72 in headroom",` +
	`"t":"USD 298,410.00","u":"2027-01-24","d":"2027-06-21","p":1204}}`
