package claims

import "strings"

// spelling brings British, short and written-out forms of a word to one.
var spelling = table(`
color: colour colours colored coloured
aluminum: aluminium alum
center: centre centerline centreline
up: ups
condition: conditioner conditioners
compartment: comp compt compts comps
auxiliary: aux
transmission: trans
rear: rr back
front: frt fr ft
crash: collision collisions impact crashes
seamless: jointless
defect: defects
propose: proposed proposes
high: hi
low: lo
exclude: excluding excluded excludes excl
liter: litre
tire: tyre
gray: grey
mold: moulded molded mould
license: licence
light: lighting lights lighted lit lamp lamps lts lt luminaire illuminate illuminated illuminates illumination
heat: heated heating
wire: wiring wired wires
hinge: hinged
clip: clips
power: powered electric electrical electrically
streetside: streetside
door: doors doorway doorways
duct: ducts ductwork
window: glazing
switch: switchable switched
swept: sweeping sweeps sweep
outlet: outlets receptacle receptacles
amber: yellow
every: everyone everybody each all both every per any anywhere everywhere entire whole
over: above atop over
under: below beneath underneath under
inside: interior inside inner
outside: exterior outside outer external
beside: alongside beside adjacent
ahead: forward
behind: rearward aft
dim: dimmable dimming dimmed dimmer
siren: sirens
camera: cameras cam
alternator: alt alternators generator
battery: batteries
cabinet: cabinets cabinetry cupboard cupboards
oxygen: o2
antenna: antennas antennae aerial ant
retract: retractable
magnet: magnetic magnets magnetically
mirror: mirrors
reflective: reflecting reflectorized
purchaser: parish borough authority university commission tribe department district county city agency buyer owner
purchaser: hospital town township village purchasers departments customer
differential: diff
person: people persons personnel
headroom: hr hdrm
payload: pl
gvwr: gvw
weight: wt wts
inverter: inv invtr
battery: batt
insulationbatt: batts batting
charger: chgr chg
power: pwr elec
speaker: spkr spkrs
wheel: whl whls
engine: eng
gasoline: gasser
drug: pharmaceutical pharmaceuticals
door: dr drs
floor: flr
insulate: insul
shoreline: sl
recorder: dvr
conversion: conv
warranty: warr
regulator: reg
structural: struct
stainless: ss
outlet: recept recpt
suction: suct
suspension: susp
cylinder: cyl cyls
acrylic: plexi plexiglas plexiglass
surface: surf
storage: strg
heat: htd
heater: htr
mount: mnt mtd
window: wndw wndws pane panes
inside: int
outside: ext
passenger: pax
steel: stl
mirror: mirr
ceiling: clg
attendant: emt medic paramedic caregiver
engine: motor motors
aisle: passage passageway passages
plate: plates
pull: pulls
cushion: cushions
headroom: headrm
wash: washable wipe wiped wipes wipeable
adjust: adjustable adjusted
lower: bottom bottommost
lock: locking locks locked lockable
fuel: fueled
swivel: rotation swiveling swivelling rotating rotate rotates rotatable turns revolving
remote: remotely
printed: print prints imprinted
number: numbers numbered
function: functions
stripeline: stripe striping stripes
handbook: manuals handbooks
idle: idling idles
heart: cardiac
clock: timepiece
sirenspeaker: loudspeaker loudspeakers
antenna: whip whips
compartment: compartmentation
wheelbase: wb
letter: lettering letters lettered
weld: welded welding welds weldment
stainless: stainless
rubberized: rubberised
undercoat: undercoating undercoated
insulate: insulation insulated insulating
warranty: warranted warranties guarantee guaranteed warrant warrants guarantees guaranty
wire: conductor conductors
month: monthly
extend: extended
manual: manually
control: controlled controlling
shelf: shelves
module: modular body box
auto: automatic automatically
shed: shedding
charge: charging
run: running runs
conference: meeting meetings conferences
chevron: chevrons
spare: spares
additional: extra further more supplemental supplementary
fault: trouble
microphone: mic mics
filter: filtration
wall: sidewall sidewalls
train: training instruction
photo: photographs photos pictures photograph
drawer: drawers
fold: foldable
slide: slider
bariatric: bariatric
lift: lifting
vent: ventilator ventilation
sharp: sharps
waste: trash garbage refuse
front: front
level: levels
temperature: temp
diameter: dia
cabinet: casework
`)

// phrases bring several words to one thing's name.
var phrases = phraseTable(`
streetside: street side | driver side | drivers side | road side | roadside | left side | left hand side | l s
streetside: driverside | street-side | left hand
curbside: curb side | passenger side | right side | right hand side | curb-side | kerb side | right hand
patientcompartment: patient compartment | patient area | patient cabin | patient module | patient space
patientcompartment: pt compartment | module inside | inside module | patient inside
cot: stretcher | gurney | wheeled cot | patient cot | primary cot | ambulance cot | wheeled stretcher
shoreline: shore line | shore power | shore-line | shore plug | shore connection | shore | shoreline
puresine: pure sine wave | true sine wave | pure sine | true sine | sine wave
walkthrough: walk through | walk thru | walkthru
fourpoint: 4point
seatedattendant: seat attendant
owncompressor: own compressor | compressor its own | compressor own
engineoff: engine off | engine not run | engine shut down | engine shut off | engine switch off | engine turn off | vehicle off
threepoint: 3point | lap and shoulder | lap and shoulder belt | three-point | lap shoulder belt
sixpoint: 6point
belt: seat belt | safety belt | harness | restraint | belt
squadbench: squad bench | side bench | crew bench | bench
grabrail: handhold | hand hold | grab rail | grab bar | grab handle | assist rail | assist bar | handrail | hand rail
domelight: dome light | ceil light | inside light
ceiling: overhead
exam: examination
sceneligh: scene light | flood light | floodlight | scene flood light
scenelight: sceneligh
loadlight: load light | loading light
warnlight: warn light | emergency light | warning light | strobe light | strobe
lightbar: light bar | bar light
lowfrequency: low frequency | low-frequency | low tone
airconditioning: air conditioning | air condition | air cool | cool
carbonmonoxide: carbon monoxide | co detector | co alarm | co monitor | carbon monoxide detector | carbon monoxide alarm
detector: alarm
pushtoclose: slam
diamondplate: diamond plate | tread plate | treadplate
gashold: gas hold open | gas spring | gas strut | gas hold-open | hold open | gas shock | gas prop
drivetrain: drive train | drive line | power train
fold: fold up | fold-up
wash: wipe clean | wipes clean | wiped clean | wipe-clean
grip: slip resistant | non slip | nonslip | anti slip | skid resistant | non skid | nonskid | anti skid
backup: back up | rear view | reverse gear | reverse | reversing
router: modem
satellite: gps | satellite position
cellular: cell
dutydepartment: on duty
handbook: operator manual | owner manual | service manual | shop manual | maintenance manual | instruction manual
manual: hand operate | by hand
manualreset: manual reset | hand reset
glovebox: glove box
multiband: multi band
fullheight: full height | floor to ceil | floor ceil
fulllength: full length
fullwidth: full width
fullsize: full size
autoeject: auto eject | eject
extrudedfoam: extruded foam
closedcell: closed cell
sprayed: spray foam
foampanel: foam core
allaround: every around | every round | all around
worksurface: counter top | countertop | counter surface
actionarea: action area
touchscreen: touch screen
duplex: duplex outlet
splash: splash guard
stainless: stainless steel
beside: next to
rubrail: rub rail
runningboard: run board | running board
runlock: run lock | engine run lock | anti theft idle
sharpscontainer: sharp container
cablight: cab light
sirenspeaker: siren speaker | speaker
lightmast: light mast
fluidwarmer: fluid warm | fluid warmer
infusion: iv
drug: narcotic | medication | medicine | med | medicament
drugsafe: narcotic safe
refrigerator: fridge | cooler box
incubator: isolette
cprdevice: chest compression device | cpr device | compression device
cpr: chest compression
speedlimit: speed limit | speed govern | govern
exhausthose: extraction hose
winter: snow
corner: corners
lock: positive lock
latch: positive latch
fillet: cove
headroom: head room
seat: seating position | seat position | belted position | belt position | seat
rear: rear end | back end
agm: absorbed glass mat | absorb glass mat
drug: controlled substance | controlled drug
unitnumber: unit number | fleet number | apparatus number | truck number
publicaddress: public address | pa
hornring: horn ring
trafficadviser: traffic adviser | traffic advisor | traffic director | directional bar | arrow stick
steel: steel
powercot: power cot
powerload: power load
changeover: change over | change-over | switch over
shutoff: shut off
staroflife: star of life
mirrorwriting: mirror writing | mirror image | reverse image | reversed
grilleguard: grille guard
brakecontrol: brake control
trailerhitch: receiver hitch | trailer hitch | receiver
gvwr: vehicle rating
sidedoor: side entrance | curbside entrance | side entry | curbside entry
sidedoor: curbside patient entrance | curbside patient door | patient entrance | side entry door | side door | curbside door | side entrance door | curbside entry door | side entry
reardoor: rear entrance | rear door | rear entry door | rear entrance door
stepwell: step well
hightemperature: high temperature | high temp
allterrain: every terrain
voltmeter: volt meter
lowvoltage: low voltage
highidle: high idle | fast idle
readout: display | gauge
wheelopening: fenderette | fender ring | wheel opening | wheel cutout | wheel arch
breathingair: scba | breathing air | breathing apparatus
toolboard: tool board
inlet: plug | connection | connector | receptacle inlet
blockheater: block heater
gasoline: gas engine | gasoline engine | gas power
lightmast: scenelight mast | scene light mast | light tower
adviser: advisor
hospitalgrade: hospital grade
crash: crash safe | crash stable | crash rated | crash proof | crash worthy
cotlift: cot lift
4x2: 2wheel drive
4x4: 4wheel drive | all wheel drive | four wheel drive
typei: type i
typeii: type ii
typeiii: type iii
`)

// idle words say nothing of what is asked for.
var idle = wordsOf(`a an and the of to with in on or for from that this these those it its their
them there which who have has
had having also plus as at be been being is are was were will shall should must may can could would do does
include included includes including inclusive incl provide provided provides providing furnish furnished furnishes
supply supplied supplies
install installed installing installation equip equipped mount-ed fit fitted come comes
unit vehicle ambulance system assembly device type style kind model item items quantity qty ea
required require requires requirement need needs needed want desired please necessary
bidder contractor vendor seller builder manufacturer manufacturers dealer offeror proposer
capacity rated rating output size sized capable able least nominal approx approximately about overall total
completed finished new
give gives giving allow allows allowing ensure have located location placed positioned position positions specified
carry carries carried carrying use used using made make constructed construction fabricated fabricate build built
design designed
such so than then when where while into onto via through by be each-s per-s
shall-be minimum maximum min max spec specification standard feature option optional accept acceptable accepted
prefer preferred
least most equal equivalent approved similar good quality suitable appropriate proper properly high-quality
configuration configurations sort sorts variety
scheme lined base material based
amount amounts fed feed feeds feeding keep keeps kept hold holds held holding shown show shows mandatory
alone retain retained retains thereto
smoothly evenly tightly snugly squarely soundly rigidly solidly cleanly closely nicely securely firmly easily
readily permanently neatly fully properly directly immediately clearly
down toward towards against across along within throughout during upon once after before when
each-of respective respectively individual individually particular certain various several
commercially available professional professionally workmanlike manner premium latest current
considered given giving sit sits stand stands reach reached reaches reaching run runs-of
means mean method way order-of purpose purposes intended intend intention
allowing permit permits permitting enable enables enabling ensure ensures serve serves serving
shall-have consist consists consisting comprise comprises comprised composed
operate-d operational functional operable working
us we you your own his her he she him themselves oneself
fine ok okay up just apparatus
mm-note note notes above-listed herein hereof thereof therein
suit suited fit-for yet whatsoever anyone anybody someone somebody
propose proposed proposes appear appears truck trucks rig rigs
unit's one's said same such whereby thereby wherein hereinafter duly likewise accordingly thereon
therewith hereto hereunder onboard paragraph supply-and whose specified themselves etc following below-listed mounted mounting fitment`)

func table(text string) map[string]string {
	out := map[string]string{}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		to, from, _ := strings.Cut(line, ": ")
		for _, w := range strings.Fields(from) {
			out[w] = to
		}
	}
	return out
}

// phrase is several stems that are one word.
type phrase struct {
	from []string
	to   string
}

// phraseTable gives the phrases by their first stem, the longer first.
func phraseTable(text string) map[string][]phrase {
	out := map[string][]phrase{}
	for _, line := range strings.Split(strings.TrimSpace(text), "\n") {
		to, from, _ := strings.Cut(line, ": ")
		to = stem(to)
		for _, p := range strings.Split(from, "|") {
			var stems []string
			for _, w := range strings.FieldsFunc(p, func(r rune) bool { return r == ' ' || r == '-' }) {
				stems = append(stems, stem(w))
			}
			list := out[stems[0]]
			at := 0
			for at < len(list) && len(list[at].from) >= len(stems) {
				at++
			}
			list = append(list, phrase{})
			copy(list[at+1:], list[at:])
			list[at] = phrase{stems, to}
			out[stems[0]] = list
		}
	}
	return out
}
