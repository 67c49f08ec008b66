// Package config holds the words everything else uses: the catalogue a plant
// publishes, the unit a customer configures from it, and the findings the
// checks report. It knows no money, reads no clock and draws nothing.
package config

import (
	"encoding/json"

	"boxwright/config/quantity"
)

// Catalogue is everything a plant offers in one dated edition.
type Catalogue struct {
	Format    string      `json:"format"`          // always CatalogueFormat
	ID        string      `json:"id"`              // stable id of the catalogue, such as "demo"
	Title     string      `json:"title"`           // name for readers
	Edition   string      `json:"edition"`         // such as "2026-11"
	ValidFrom Date        `json:"valid_from"`      // first day the edition is in force
	Notice    string      `json:"notice"`          // printed with every quote, such as that the data are invented
	Start     string      `json:"start,omitempty"` // chassis a new quote begins on; the first when empty
	Guide     *Guide      `json:"guide,omitempty"` // the guided quote; none when left out
	Chapters  []Chapter   `json:"chapters"`        // order in which groups are shown
	Chassis   []Chassis   `json:"chassis"`
	Bodies    []Body      `json:"bodies"`
	Groups    []Group     `json:"groups"`
	Options   []Option    `json:"options"`
	Rules     []Rule      `json:"rules"`
	Duties    []Duty      `json:"duties,omitempty"` // kinds of unit, and what each asks
	Equipment []Equipment `json:"equipment"`        // loose equipment a unit can carry
	Plant     Plant       `json:"plant"`
	Traits    []Trait     `json:"traits,omitempty"` // how things are mounted, made, fed and worked
	Asked     []Asked     `json:"asked,omitempty"`  // how purchasers ask for what is offered
	// Signers are the roster of those who may sign quotes. It is no part of the
	// edition's content hash: a key that is revoked must not turn the quotes
	// already sent into quotes of an edition nobody holds.
	Signers   []Signer `json:"signers,omitempty"`
	SignersOn Date     `json:"signers_on,omitzero"` // day the roster is of
	// Signed is the plant's signature under all of it, the roster among it; nil without.
	Signed *PlantSignature `json:"signed,omitempty"`
	// PriceBook is opaque here, since money never enters this package; package
	// pricing decodes and checks it. It is part of the edition's content hash.
	PriceBook json.RawMessage `json:"price_book"`

	index index
}

// CatalogueFormat is the value of Catalogue.Format this program reads.
const CatalogueFormat = "boxwright-catalogue/1"

// Chapter is a heading under which groups are shown together.
type Chapter struct {
	ID    string `json:"id"`
	Label string `json:"label"`
}

// Chassis is a truck as the plant receives it, before the module is mounted.
// Stations are x inches behind the front axle, z inches above the ground.
type Chassis struct {
	ID        string `json:"id"`
	Label     string `json:"label"`                // what it is: "Cutaway 14,500 lb, 158 in wheelbase"
	Spec      string `json:"spec"`                 // a sentence or two for the customer
	UsualBody string `json:"usual_body,omitempty"` // body usually mounted on it; the first when empty

	Type  string `json:"type" attr:"I|I-AD|II|III|III-AD" rules:"yes"`
	Cab   string `json:"cab" attr:"cab-chassis|cutaway|van|medium" rules:"yes"`
	Drive string `json:"drive" attr:"4x2|4x4" rules:"yes"`
	Fuel  string `json:"fuel" attr:"diesel|gasoline" rules:"yes"`

	WheelbaseIn     quantity.Length `json:"wheelbase_in" attr:"1..1e5" rules:"yes"`
	CabToAxleIn     quantity.Length `json:"cab_to_axle_in" attr:"0..1e4" rules:"yes"` // cab to rear axle; 0 for a van
	FrontOverhangIn quantity.Length `json:"front_overhang_in" attr:"0..1e4"`          // front axle to bumper face
	BodyStartIn     quantity.Length `json:"body_start_in" attr:"0..1e4"`              // front wall of the module
	// top of frame above ground, loaded
	FrameHeightIn quantity.Length `json:"frame_height_in" attr:"0..1e4"`
	// module floor above ground, loaded
	FloorHeightIn quantity.Length `json:"floor_height_in" attr:"1..1e5"`
	CabHeightIn   quantity.Length `json:"cab_height_in" attr:"0..1e4"`  // roof of cab above ground
	WidthIn       quantity.Length `json:"width_in" attr:"0..1e4"`       // cab width less mirrors
	TrackFrontIn  quantity.Length `json:"track_front_in" attr:"1..1e5"` // center to center of the wheels
	// center to center; of the dual pairs on duals
	TrackRearIn quantity.Length `json:"track_rear_in" attr:"1..1e5"`
	// between the tires of a pair; 0 single
	DualSpacingIn quantity.Length `json:"dual_spacing_in" attr:"0..1e4"`
	// end of frame behind the rear axle
	FrameEndIn  quantity.Length `json:"frame_end_in" attr:"0..1e4"`
	GVWRLb      quantity.Mass   `json:"gvwr_lb" attr:"1..1e5" rules:"yes"`
	GAWRFrontLb quantity.Mass   `json:"gawr_front_lb" attr:"1..1e5" rules:"yes"`
	GAWRRearLb  quantity.Mass   `json:"gawr_rear_lb" attr:"1..1e5" rules:"yes"`
	CurbFrontLb quantity.Mass   `json:"curb_front_lb" attr:"1..1e5"` // chassis alone, full fluids, nobody aboard
	CurbRearLb  quantity.Mass   `json:"curb_rear_lb" attr:"1..1e5"`
	CurbTolLb   quantity.Mass   `json:"curb_tol_lb" attr:"0..1e4"`  // half width of the likely range of its curb weight
	CGHeightIn  quantity.Length `json:"cg_height_in" attr:"1..1e5"` // of the chassis alone, above ground
	FrontTires  Tires           `json:"front_tires"`
	RearTires   Tires           `json:"rear_tires"`
	// turning circle between curbs, across; 0 not stated, or worked out from SteerDeg
	TurningFt quantity.Feet `json:"turning_ft,omitempty" attr:"0..200"`
	// cut of the inner front wheel; 0 not stated
	SteerDeg float64 `json:"steer_deg,omitempty" attr:"0..60"`
	// travel of the loaded rear wheel upward; 0 is 3
	JounceIn    quantity.Length `json:"jounce_in,omitempty" attr:"0..20"`
	BumperLowIn quantity.Length `json:"bumper_low_in,omitempty" attr:"0..60"` // lower edge of the front bumper; 0 is 16
	ClearanceIn quantity.Length `json:"clearance_in,omitempty" attr:"0..60"`  // lowest part between the axles; 0 is 8
	FuelGal     float64         `json:"fuel_gal" attr:"0..1e4"`               // in the curb weight
	// center of the fuel tank, behind the front axle and right of the middle; 0 along: three
	// quarters of the wheelbase
	FuelXIn quantity.Length `json:"fuel_x_in,omitempty" attr:"0..1e4"`
	FuelYIn quantity.Length `json:"fuel_y_in,omitempty" attr:"-60..60"`
	CGYIn   quantity.Length `json:"cg_y_in,omitempty" attr:"-20..20"` // of the chassis alone, right of the middle

	// What its maker allows of the finished vehicle, by the body builder's book; 0: not stated.
	// Unloaded is full fluids with nobody and nothing loose aboard.
	CGMostIn        quantity.Length `json:"cg_most_in,omitempty" attr:"0..200"`         // center of gravity, full load
	CurbMostLb      quantity.Mass   `json:"curb_most_lb,omitempty" attr:"0..1e5"`       // unloaded
	CurbFrontMostLb quantity.Mass   `json:"curb_front_most_lb,omitempty" attr:"0..1e5"` // of it on the front axle
	CurbRearMostLb  quantity.Mass   `json:"curb_rear_most_lb,omitempty" attr:"0..1e5"`  // of it on the rear axle
	FrontLeastLb    quantity.Mass   `json:"front_least_lb,omitempty" attr:"0..1e5"`     // front axle, full load
	FrontalMostFt2  float64         `json:"frontal_most_ft2,omitempty" attr:"0..1000"`  // width by height
	OverhangMostPct float64         `json:"overhang_most_pct,omitempty" attr:"0..200"`  // rear, of the wheelbase
	// what may be done to the frame, in the maker's terms
	FrameRules string `json:"frame_rules,omitempty"`

	CabSeats []Seat `json:"cab_seats"` // stations: x behind front axle, z above ground

	Load   Load     `json:"load"`   // engine, ignition, lamps, wipers, cab climate
	Supply Supply   `json:"supply"` // what the chassis generates and stores as it comes
	Arrive Span     `json:"arrive"` // working days from order to arrival at the plant
	Work   []Work   `json:"work"`   // plant work this chassis adds to the common network
	Tags   []string `json:"tags,omitempty"`
}

// Tires of one axle. LoadLb is the maximum load of one tire at PressurePSI in
// the mounting it has here (single or dual).
type Tires struct {
	Size        string        `json:"size"`
	Count       int           `json:"count"` // 2 or 4 on the axle
	LoadLb      quantity.Mass `json:"load_lb" attr:"1..1e5"`
	PressurePSI float64       `json:"pressure_psi"`
	Passenger   bool          `json:"passenger,omitempty"` // P-metric: load is divided by 1.10 (49 CFR 571.120 S5.1.2)
}

// Body is a module, or the conversion of a van that has none.
// Stations inside it: x behind the module's front wall, y right of the
// centerline, z above the module floor.
type Body struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Spec  string `json:"spec"`

	Kind       string          `json:"kind" attr:"module|van" rules:"yes"`
	LengthIn   quantity.Length `json:"length_in" attr:"0..1000" rules:"yes"`
	WidthIn    quantity.Length `json:"width_in" attr:"0..1000" rules:"yes"`
	HeightIn   quantity.Length `json:"height_in" attr:"0..1000"` // outside, floor underside to roof
	HeadroomIn quantity.Length `json:"headroom_in" attr:"0..1000" rules:"yes"`
	AisleIn    quantity.Length `json:"aisle_in" attr:"0..1000"`         // clear walkway beside the cot
	BeltIn     quantity.Length `json:"belt_in,omitempty" attr:"0..100"` // belt line above the floor; 0 is 30
	Doors      Doors           `json:"doors,omitzero"`

	// Existing marks a module that is there already and is remounted: it needs no
	// shell, its weight (`mass`) is all of it, and what was measured stands in Unit.Existing.
	Existing bool `json:"existing,omitempty" rules:"yes"`
	// Photos are what the plant asks to see of an existing module before it is appraised.
	Photos []string `json:"photos,omitempty"`
	// Shell, for a new module, is what its weight and center are taken off from.
	Shell *Shell `json:"shell,omitempty"`
	// Mass is the weight of what the shell does not cover: for a module trim, fasteners, sealants
	// and what no option says; for a van conversion the whole lining and partition.
	Mass Mass `json:"mass"`

	Compartments []Compartment `json:"compartments"`
	Work         []Work        `json:"work"`
	Tags         []string      `json:"tags,omitempty"`
}

// Doors are the openings for people. Zero fields take the usual value named beside
// each; all are common practice, no source.
type Doors struct {
	// front edge of the side entry behind the front wall; 21
	SideXIn      quantity.Length `json:"side_x_in,omitempty"`
	SideWidthIn  quantity.Length `json:"side_width_in,omitempty"`  // 30
	SideHeightIn quantity.Length `json:"side_height_in,omitempty"` // 63
	RearWidthIn  quantity.Length `json:"rear_width_in,omitempty"`  // of both leaves together; 48
	RearHeightIn quantity.Length `json:"rear_height_in,omitempty"` // 60
}

// Shell is the geometry of a welded aluminum module. Zero fields take the
// plant's usual value, named beside each; all are common practice, no source.
type Shell struct {
	FrameSpacingIn quantity.Length `json:"frame_spacing_in"`         // between uprights; 16 if zero
	FrameTubeIn    quantity.Length `json:"frame_tube_in,omitempty"`  // square structural tube; 2 if zero
	TubeWallIn     quantity.Length `json:"tube_wall_in,omitempty"`   // 0.125 if zero
	SideSkinIn     quantity.Length `json:"side_skin_in,omitempty"`   // 0.125 if zero
	RoofSkinIn     quantity.Length `json:"roof_skin_in,omitempty"`   // 0.090 if zero
	FloorSheetIn   quantity.Length `json:"floor_sheet_in,omitempty"` // 0.125 if zero
	// sub-floor board, lb per square foot; 2.2 if zero
	FloorCoreLbFt2  float64         `json:"floor_core_lb_ft2,omitempty"`
	CornerPostIn    quantity.Length `json:"corner_post_in,omitempty"`    // wall of the corner extrusion; 0.250 if zero
	InsulationIn    quantity.Length `json:"insulation_in,omitempty"`     // thickness; 2 if zero
	InsulationLbFt3 float64         `json:"insulation_lb_ft3,omitempty"` // 1.9 if zero
	LiningLbFt2     float64         `json:"lining_lb_ft2,omitempty"`     // inside wall panels; 1.1 if zero
	SideDoors       int             `json:"side_doors"`                  // entry doors on the curb side
	RearDoors       int             `json:"rear_doors"`
	SideDoorIn      quantity.Length `json:"side_door_in,omitempty"` // width of an entry door; the body's own if zero
	// height of the rear doors; the body's own if zero
	RearDoorHIn quantity.Length `json:"rear_door_h_in,omitempty"`
	// of the outside compartments: "hinged", also if empty, or "roll-up"
	CompDoors string `json:"comp_doors,omitempty"`
	Weld      string `json:"weld,omitempty"` // "continuous" or "stitch"; "continuous" if empty
}

// Compartment is a place where loose equipment can be carried.
type Compartment struct {
	ID    string          `json:"id"`
	Label string          `json:"label"`
	Side  string          `json:"side"`            // "street", "curb", "rear" or "inside"
	Along string          `json:"along,omitempty"` // where x counts from, see PlaceAlongs; the front wall when empty
	XIn   quantity.Length `json:"x_in"`            // of its center
	YIn   quantity.Length `json:"y_in"`            // 0 at street or curb side: flush with the skin
	// inside wall that y counts from, inward; empty: from the centerline
	Wall     string          `json:"wall,omitempty"`
	ZIn      quantity.Length `json:"z_in"`     // above the module floor; negative below
	WidthIn  quantity.Length `json:"width_in"` // inside, along the vehicle
	DepthIn  quantity.Length `json:"depth_in"` // inside, across the vehicle
	HeightIn quantity.Length `json:"height_in"`
	Slot     string          `json:"slot,omitempty"`     // by which options name it that take its place
	LimitLb  quantity.Mass   `json:"limit_lb,omitempty"` // rated load of its floor or shelf; 0 not stated
	Takes    []string        `json:"takes,omitempty"`    // what may ride only where it is said, such as "oxygen"
	// things that it is made for, and how many of each: a mount or a bracket, which holds nothing else
	Holds []Aboard `json:"holds,omitempty"`
}

// Seat is a place for a person. Kind is "cab", "attendant", "bench", "folding"
// or "cot"; a cot counts as a patient, the others as designated seats.
type Seat struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Kind  string `json:"kind"`
	// where x counts from, see PlaceAlongs; in the module its front wall when empty
	Along string          `json:"along,omitempty"`
	XIn   quantity.Length `json:"x_in"`
	YIn   quantity.Length `json:"y_in"`
	ZIn   quantity.Length `json:"z_in"`
	// how far ahead of its station it locks, too; what stands there may keep it from it
	ForwardIn quantity.Length `json:"forward_in,omitempty"`
}

// Mass is the weight of a thing, how well it is known, and where it sits.
type Mass struct {
	Lb      quantity.Mass   `json:"lb"`                // may be negative for a deletion
	TolLb   quantity.Mass   `json:"tol_lb,omitempty"`  // half width of its likely range; 0 means 5 % is assumed
	Zone    string          `json:"zone,omitempty"`    // where x and z count from, see Zones
	XIn     quantity.Length `json:"x_in,omitempty"`    // positive rearward
	YIn     quantity.Length `json:"y_in,omitempty"`    // positive to the right (curb side)
	ZIn     quantity.Length `json:"z_in,omitempty"`    // positive up
	Derived bool            `json:"derived,omitempty"` // already counted elsewhere, such as in the shell
}

// Zones a station can count from. For the module zones z counts from the
// module floor, for the others from the ground.
const (
	ZoneChassis    = "chassis"     // x behind the front axle
	ZoneBumper     = "bumper"      // x behind the front bumper face; negative ahead of it
	ZoneRearAxle   = "rear-axle"   // x behind the rear axle
	ZoneModule     = "module"      // x behind the module's front wall
	ZoneModuleMid  = "module-mid"  // x behind the middle of the module
	ZoneModuleRear = "module-rear" // x behind the module's rear wall; negative inside
	ZonePlaces     = "places"      // from the center of the option's own places, compartments or seats
)

// Zones lists them all.
var Zones = []string{ZoneChassis, ZoneBumper, ZoneRearAxle, ZoneModule, ZoneModuleMid, ZoneModuleRear, ZonePlaces}

// Group is a set of options and how many of them a unit may hold.
type Group struct {
	ID      string `json:"id"`
	Label   string `json:"label"`
	Chapter string `json:"chapter"`
	Choose  string `json:"choose"` // "one", "at-most-one" or "any"
	Help    string `json:"help,omitempty"`
	// duties whose units alone have something of it; empty: all that are not without it
	Only []string `json:"only,omitempty"`
	// of each of its options that draws current and has no tests of its own
	Test *Trial `json:"test,omitempty"`
}

// How many options of a group a unit holds.
const (
	ChooseOne       = "one"
	ChooseAtMostOne = "at-most-one"
	ChooseAny       = "any"
)

// Option is one thing a customer can have.
type Option struct {
	ID    string `json:"id"`
	Group string `json:"group"`
	Label string `json:"label"`
	Spec  string `json:"spec"` // the sentence printed in the quote
	// of a part that stays in a remount: what it is counted as until it is measured, a sentence behind that
	Counted  string `json:"counted,omitempty"`
	Standard bool   `json:"standard,omitempty"` // what a unit gets when the customer does not say
	// standard in a remount, in place of its group's usual ones: what the module has already, or
	// work always done
	Remount  bool   `json:"remount,omitempty"`
	MaxQty   int    `json:"max_qty,omitempty"`   // 0 and 1 both mean one
	PriceKey string `json:"price_key,omitempty"` // empty: the option's id
	// what the customer is to say with it, such as "Color name or code"; empty: nothing
	Asks string `json:"asks,omitempty"`
	// what of it the purchaser weighs, such as "Weight of the cot": that counts in place of its own
	AsksLb string `json:"asks_lb,omitempty"`

	Mass    *Mass    `json:"mass,omitempty"`
	Load    *Load    `json:"load,omitempty"`    // 12 V current it draws
	Supply  *Supply  `json:"supply,omitempty"`  // what it generates or stores
	Circuit *Circuit `json:"circuit,omitempty"` // how it is wired
	Work    []Work   `json:"work,omitempty"`
	Parts   *Span    `json:"parts,omitempty"` // working days its long-lead part takes to arrive
	// PartsFor are the plant's activities that wait for the part, each with all
	// that comes after it; empty: those that come after the plant's parts step.
	PartsFor []string `json:"parts_for,omitempty"`

	// enclosed inside storage it adds; negative when it takes some
	StorageFt3   quantity.Volume `json:"storage_ft3,omitempty"`
	Compartments []Compartment   `json:"compartments,omitempty"` // exterior or interior compartments it adds
	Fitted       *Fitted         `json:"fitted,omitempty"`       // how it stands in compartments of the body
	Water        *Water          `json:"water,omitempty"`        // that it carries for washing
	Seats        []Seat          `json:"seats,omitempty"`        // module stations: x from front wall, z above floor
	TakesSeats   []string        `json:"takes_seats,omitempty"`  // ids of seats on which a patient lies instead
	Oxygen       *Oxygen         `json:"oxygen,omitempty"`
	Air          *Oxygen         `json:"air,omitempty"`         // medical air, by the same figures
	HeadroomIn   quantity.Length `json:"headroom_in,omitempty"` // what it takes away from the headroom, positive
	AisleIn      quantity.Length `json:"aisle_in,omitempty"`    // what it takes away from the walkway, positive
	Shell        *ShellChange    `json:"shell,omitempty"`       // what it changes in the module's construction
	Places       []Place         `json:"places,omitempty"`      // where its pieces stand
	Look         *Look           `json:"look,omitempty"`        // how it changes what others look like
	Unseen       string          `json:"unseen,omitempty"`      // why it cannot be seen, see UnseenReasons
	// slots of the body's compartments that it takes the place of
	Displaces []string        `json:"displaces,omitempty"`
	LowersIn  quantity.Length `json:"lowers_in,omitempty"` // by how much the rear floor comes down for loading
	Clauses   []string        `json:"clauses,omitempty"`   // standard clauses it declares met
	// years that it warrants the structure from delivery on; 0: none, or what is left of a first warranty
	StructureYears int      `json:"structure_years,omitempty"`
	Tests          []Trial  `json:"tests,omitempty"` // lines of the test sheet
	Care           []Care   `json:"care,omitempty"`  // lines of the maintenance schedule
	Tags           []string `json:"tags,omitempty"`
}

// Load is current at 12 V nominal in each duty mode, and mains power. A current is the
// one at AtV; without AtV it is the one at the voltage of its own mode. At another
// voltage it moves as Behaves says.
type Load struct {
	ParkedA     quantity.Current `json:"parked_a,omitempty"`     // standing on shore line
	DrivingA    quantity.Current `json:"driving_a,omitempty"`    // on the road, no call
	RespondingA quantity.Current `json:"responding_a,omitempty"` // warning devices in the moving mode
	SceneA      quantity.Current `json:"scene_a,omitempty"`      // at idle on scene
	Shed        int              `json:"shed,omitempty"`         // order of shedding, 1 first; 0 never shed
	ACW         quantity.Power   `json:"ac_w,omitempty"`         // 125 V power it takes from inverter or shore line
	ACDuty      *ACDuty          `json:"ac_duty,omitempty"`      // share of ACW in use by mode; see ACDuty
	AtV         float64          `json:"at_v,omitempty"`         // voltage of the stated currents
	// "resistive": current rises with voltage; "power": it falls, as of what takes the same watts
	// at any voltage; empty: the same at any voltage
	Behaves string `json:"behaves,omitempty"`
	// what must run on when all else is shut off: how long the batteries carry it is a figure
	Kept bool `json:"kept,omitempty"`
	// EngineA is the part of each current that flows only while the engine runs: ignition, fuel
	// pump, the clutch of a belt-driven compressor
	EngineA quantity.Current `json:"engine_a,omitempty"`
}

// ACDuty is how much of a 125 V load is in use while an inverter feeds it, 0 to 1 in
// each mode. A load that states none is in use responding and on scene, and off on the
// road without a call: common practice, no source.
type ACDuty struct {
	Driving    float64 `json:"driving"`
	Responding float64 `json:"responding"`
	Scene      float64 `json:"scene"`
}

// Supply is what generates, stores or feeds power. Options that replace what
// the chassis brings set Replaces; otherwise their figures add.
type Supply struct {
	HotIdleA     quantity.Current `json:"hot_idle_a,omitempty"`      // alternator at idle, 200 F under hood
	HotHighIdleA quantity.Current `json:"hot_high_idle_a,omitempty"` // at high idle, 200 F
	ColdA        quantity.Current `json:"cold_a,omitempty"`          // nameplate
	BatteryAh    quantity.Charge  `json:"battery_ah,omitempty"`      // 20-hour rate
	ShoreA       quantity.Current `json:"shore_a,omitempty"`         // rating of the 125 V inlet
	InverterW    quantity.Power   `json:"inverter_w,omitempty"`      // continuous
	// of its output in what it takes from the 12 V side, in percent; 0: the usual one
	InverterPct float64 `json:"inverter_pct,omitempty"`
	// InverterKept says that its inverter feeds nothing but what must run on, see Load.Kept.
	InverterKept bool           `json:"inverter_kept,omitempty"`
	GeneratorW   quantity.Power `json:"generator_w,omitempty"` // continuous, of a generator aboard
	// ChargeA is what its battery charger delivers on the shore line.
	ChargeA quantity.Current `json:"charge_a,omitempty"`
	// Chemistry of the batteries: "lead" (flooded, AGM) or "lithium"; lead if empty.
	Chemistry string `json:"chemistry,omitempty"`
	// Job of the batteries: "house" feeds the module, "starting" the engine alone; empty: both,
	// and where there is a house bank such batteries are kept for starting.
	Job       string  `json:"job,omitempty"`
	UsablePct float64 `json:"usable_pct,omitempty"` // of BatteryAh; 0: usual for the chemistry
	Exponent  float64 `json:"exponent,omitempty"`   // Peukert's; 0: usual for the chemistry
	Replaces  bool    `json:"replaces,omitempty"`
}

// Circuit is one protected 12 V run.
type Circuit struct {
	Function string           `json:"function"`           // marked on the wire every 4 in
	Amps     quantity.Current `json:"amps"`               // continuous current of the run
	RunFt    float64          `json:"run_ft"`             // one-way length of conductor, ft
	Critical bool             `json:"critical,omitempty"` // 3 % drop rather than 10 %
	Count    int              `json:"count,omitempty"`    // runs alike, each with its own fuse; 0 and 1 both mean one
}

// Oxygen supply or fixed cylinder.
type Oxygen struct {
	Cylinder     string  `json:"cylinder"`       // "D", "E", "M", "H"
	LitersPerPSI float64 `json:"liters_per_psi"` // the cylinder factor
	FullPSI      float64 `json:"full_psi"`
	Count        int     `json:"count"`
}

// Water is what a unit carries to wash people with, and what it takes back.
type Water struct {
	FreshGal float64 `json:"fresh_gal"`
	WasteGal float64 `json:"waste_gal"`
	FlowGPM  float64 `json:"flow_gpm"` // of one shower, gallons a minute
}

// ShellChange overrides parts of the module's construction.
type ShellChange struct {
	Weld            string          `json:"weld,omitempty"`           // "continuous" or "stitch"
	CornerPostIn    quantity.Length `json:"corner_post_in,omitempty"` // wall thickness
	SideSkinIn      quantity.Length `json:"side_skin_in,omitempty"`
	InsulationIn    quantity.Length `json:"insulation_in,omitempty"`
	InsulationLbFt3 float64         `json:"insulation_lb_ft3,omitempty"`
	FrameSpacingIn  quantity.Length `json:"frame_spacing_in,omitempty"`
	SideDoorIn      quantity.Length `json:"side_door_in,omitempty"`   // width of an entry door
	RearDoorHIn     quantity.Length `json:"rear_door_h_in,omitempty"` // height of the rear doors
	CompDoors       string          `json:"comp_doors,omitempty"`     // "hinged" or "roll-up"
}

// CompDoors are the words for the doors of outside compartments; empty is hinged.
var CompDoors = []string{"", "hinged", "roll-up"}

// Equipment is something loose that the service carries.
type Equipment struct {
	ID       string          `json:"id"`
	Label    string          `json:"label"`
	MassLb   quantity.Mass   `json:"mass_lb"`
	LengthIn quantity.Length `json:"length_in"`
	WidthIn  quantity.Length `json:"width_in"`
	HeightIn quantity.Length `json:"height_in"`
	Basis    string          `json:"basis,omitempty"` // where the weight comes from
	Stow     *Stowage        `json:"stow,omitempty"`  // where it belongs
}
