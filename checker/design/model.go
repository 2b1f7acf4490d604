package design

import (
	"github.com/ventlint/ventlint/checker/document"
	q "github.com/ventlint/ventlint/checker/quantity"
)

// Design is one dwelling and its ventilation, as one *.vent.toml file gives it.
// A pointer field is an optional input: nil means that the file does not say.
//
// A tag range bounds a figure beyond its type: "positive" is more than zero,
// "any" takes negative figures too, and "1..20" is from 1 to 20. Without it a
// ratio lies in 0 % to 100 %, a temperature is free, and any other figure is
// zero or more. No length is over 10 km.
type Design struct {
	document.Ref `toml:"-"`

	Format           int                `toml:"format,required" range:"any"` // of the file: 1
	Project          *Project           `toml:"project,required"`
	Dwelling         *Dwelling          `toml:"dwelling,required"`
	Rooms            []*Room            `toml:"room"`
	Walls            []*Wall            `toml:"wall"`
	Lines            []*Line            `toml:"line"`
	BuildingOpenings []*BuildingOpening `toml:"building_opening"`
	Openings         []*Opening         `toml:"opening"`
	Sources          []*Source          `toml:"source"`
	Ventilators      []*Ventilator      `toml:"ventilator"`
	Terminals        []*Terminal        `toml:"terminal"`
	Ducts            []*Duct            `toml:"duct"`
	Appliances       []*Appliance       `toml:"appliance"`
	Commissioning    *Commissioning     `toml:"commissioning"`
	StatedDistances  []*StatedDistance  `toml:"stated_distance"`
	Variances        []*Variance        `toml:"variance"`

	byID map[string]any
}

// Thing is what every named part of a design shares. Ids are unique over the
// whole file.
type Thing struct {
	document.Ref `toml:"-"`

	ID   string  `toml:"id,required"`
	Name *string `toml:"name"`
}

// Project says which design this is and what it claims to be.
type Project struct {
	document.Ref `toml:"-"`

	Name         string   `toml:"name,required"`
	Site         *string  `toml:"site"`
	Jurisdiction *string  `toml:"jurisdiction"`
	Designer     *string  `toml:"designer"` // a role, never a person
	Stage        Stage    `toml:"stage,required"`
	Units        Units    `toml:"units,required"`
	Codes        []string `toml:"codes"` // ids of the packs it is designed to
	Notes        *string  `toml:"notes"`
}

// Dwelling holds the figures of the whole house and its climate.
type Dwelling struct {
	document.Ref `toml:"-"`

	FloorArea      *q.Area        `toml:"floor_area" range:"positive"` // conditioned, all storeys
	Volume         *q.Volume      `toml:"volume" range:"positive"`     // conditioned
	Bedrooms       *int           `toml:"bedrooms" range:"0..100"`
	Occupants      *int           `toml:"occupants" range:"0..1000"`
	Storeys        *float64       `toml:"storeys" range:"positive"` // above grade; 1.5 with a half storey
	Height         *q.Length      `toml:"height" range:"positive"`  // lowest to highest above-grade point of the pressure boundary
	ClimateZone    *string        `toml:"climate_zone"`             // of the energy code, such as "6A"
	Elevation      *q.Length      `toml:"elevation" range:"any"`    // above sea level
	WinterOutdoor  *q.Temperature `toml:"winter_outdoor"`           // winter design, dry bulb
	SummerOutdoor  *q.Temperature `toml:"summer_outdoor"`           // summer design, dry bulb
	SummerWetBulb  *q.Temperature `toml:"summer_wet_bulb"`          // coincident with summer_outdoor
	WinterIndoor   *q.Temperature `toml:"winter_indoor"`
	SummerIndoor   *q.Temperature `toml:"summer_indoor"`
	WinterHumidity *q.Ratio       `toml:"winter_humidity"` // indoor relative humidity
	SummerHumidity *q.Ratio       `toml:"summer_humidity"`
	AttachedShare  *q.Ratio       `toml:"attached_share"`          // of the envelope, against other dwellings or garages
	SnowDepth      *q.Length      `toml:"snow_depth"`              // expected on the ground
	FloodLevel     *q.Length      `toml:"flood_level" range:"any"` // above the site datum; absent outside a flood hazard area
	Leakage        *Leakage       `toml:"leakage"`
}

// Leakage is the airtightness of the envelope.
type Leakage struct {
	document.Ref `toml:"-"`

	Flow50        *q.Flow      `toml:"flow_50" range:"positive"`        // at 50 Pa
	AirChanges50  *q.AirChange `toml:"air_changes_50" range:"positive"` // at 50 Pa
	Exponent      *float64     `toml:"exponent" range:"0.5..1"`         // of flow on pressure
	Basis         *Evidence    `toml:"basis"`
	WeatherFactor *float64     `toml:"weather_factor" range:"positive"` // weather and shielding factor of the rate standard
	WeatherSource *string      `toml:"weather_source"`                  // where the factor was read
}

// Room is a room or space: attic, crawl space and garage included.
type Room struct {
	Thing

	Use          RoomUse        `toml:"use,required"`
	Area         *q.Area        `toml:"area" range:"positive"`   // of the floor
	Height       *q.Length      `toml:"height" range:"positive"` // of the ceiling
	Storey       *int           `toml:"storey" range:"any"`      // 0 is at grade, -1 below it
	Conditioned  *bool          `toml:"conditioned"`
	LowestTemp   *q.Temperature `toml:"lowest_temperature"` // that the space reaches in winter
	PassageArea  *q.Area        `toml:"open_passage_area"`  // permanent openings to adjoining rooms
	DoorUndercut *q.Length      `toml:"door_undercut"`
	DoorWidth    *q.Length      `toml:"door_width" range:"positive"`
	TransferArea *q.Area        `toml:"transfer_area"` // free area of transfer grilles
	LocalExhaust *LocalExhaust  `toml:"local_exhaust"`
}

// LocalExhaust is how a kitchen, bathroom or toilet room is exhausted.
type LocalExhaust struct {
	document.Ref `toml:"-"`

	Flow          *q.Flow     `toml:"flow"`
	Mode          *RunMode    `toml:"mode"`
	RatedPressure *q.Pressure `toml:"rated_pressure"` // static pressure at which the flow is listed
	Discharge     *Discharge  `toml:"discharge"`
}

// Wall is one straight wall of the footprint. Walls stand in order, counter-
// clockwise seen from above, each beginning where the one before it ends.
type Wall struct {
	Thing

	From   *Point    `toml:"from"`
	To     *Point    `toml:"to"`
	Grade  *q.Length `toml:"grade" range:"any"`       // finished ground at the wall, above the site datum
	Height *q.Length `toml:"height" range:"positive"` // top of the wall above that ground
}

// Point is a place on the plan: x and y from the site datum.
type Point struct{ X, Y q.Length }

// Line is a lot line, or another line of the plan that codes measure from.
type Line struct {
	Thing

	Kind LineKind `toml:"kind,required"`
	From *Point   `toml:"from"`
	To   *Point   `toml:"to"`
}

// Placement says where something is: on a wall, on the roof, or on the ground.
// On a wall, from_left (seen from outside) and above_grade are to the centre of
// the shape. On the roof, roof = true, at and level are. On the ground, at, or
// along (a line), or outline (an area), with level; above_grade then says how high
// that is above the finished ground there. A shape is round (diameter) or
// rectangular (width and height); a line and an area have none, nor a source that
// says it is a point.
type Placement struct {
	Wall       *Link[Wall] `toml:"wall"`
	FromLeft   *q.Length   `toml:"from_left"`
	AboveGrade *q.Length   `toml:"above_grade" range:"any"`
	Roof       *bool       `toml:"roof"`
	At         *Point      `toml:"at"`
	Along      []Point     `toml:"along"`
	Outline    []Point     `toml:"outline"`
	Level      *q.Length   `toml:"level" range:"any"` // of the shape's centre, above the site datum
	Diameter   *q.Length   `toml:"diameter" range:"positive"`
	Width      *q.Length   `toml:"width" range:"positive"`
	Height     *q.Length   `toml:"height" range:"positive"`
}

// BuildingOpening is a window, door or other opening into the building that is
// not the end of a ventilation duct.
type BuildingOpening struct {
	Thing
	Placement

	Kind     BuildingOpeningKind `toml:"kind,required"`
	Operable *bool               `toml:"operable"`
}

// Opening is where a ventilation duct meets outdoors.
type Opening struct {
	Thing
	Placement

	Kind             OpeningKind         `toml:"kind,required"`
	Serves           *string             `toml:"serves"`         // id of the ventilator or appliance whose air passes
	Fitting          *string             `toml:"fitting"`        // same word on both halves of one factory-built combination fitting
	FittingListed    *bool               `toml:"fitting_listed"` // listed combination fitting, installed by its maker's instructions
	AirFrom          *AirOrigin          `toml:"air_from"`
	Flow             *q.Flow             `toml:"flow"`                            // passing while it runs
	ScreenOpening    *q.Length           `toml:"screen_opening" range:"positive"` // largest dimension of a mesh opening
	Screened         *bool               `toml:"screened"`
	CorrosionProof   *bool               `toml:"corrosion_resistant"` // its screen or louver
	WeatherProtected *bool               `toml:"weather_protected"`
	Damper           *DamperKind         `toml:"damper"`
	Discharges       *DischargeDirection `toml:"discharges"`
	OverWalkway      *bool               `toml:"over_walkway"` // blows onto a walkway
	Labelled         *bool               `toml:"labelled"`
	FreeArea         *q.Area             `toml:"free_area" range:"positive"`
	Loss             *q.Pressure         `toml:"loss"`                      // of the hood with its screen and damper ...
	LossFlow         *q.Flow             `toml:"loss_at" range:"positive"`  // ... at this flow
	SurfaceBelow     *q.Length           `toml:"surface_below" range:"any"` // level of the nearest lasting flat surface below, above grade
	ServiceReach     *q.Length           `toml:"service_reach"`             // height above standing surface for cleaning
	UnderDeck        *bool               `toml:"under_deck"`
	FromCorner       *q.Length           `toml:"from_corner"`
}

// Source is something that an intake must stay away from.
type Source struct {
	Thing
	Placement

	Kind            SourceKind  `toml:"kind,required"`
	Point           *bool       `toml:"point"`          // its place is that of its nearest edge: no size counts
	FuelInput       *q.Power    `toml:"fuel_input"`     // of the appliance that vents here
	GasPressure     *q.Pressure `toml:"gas_pressure"`   // in the regulator's supply
	SameDwelling    *bool       `toml:"same_dwelling"`  // of the dwelling of the intake
	FilledOnSite    *bool       `toml:"filled_on_site"` // LP container
	MakerDistance   *q.Length   `toml:"maker_distance"` // to an intake, by the maker's instructions
	MechanicalDraft *bool       `toml:"mechanical_draft"`
}

// Ventilator is the unit, or the set of fans, that ventilates the dwelling.
type Ventilator struct {
	Thing

	Kind                  VentilatorKind `toml:"kind,required"`
	Room                  *Link[Room]    `toml:"room"`
	Mounting              *Mounting      `toml:"mounting"`
	SupplyFlow            *q.Flow        `toml:"supply_flow"`                        // outdoor air delivered while running
	ExtractFlow           *q.Flow        `toml:"extract_flow"`                       // air taken from the house while running
	MinutesPerHour        *q.Duration    `toml:"minutes_per_hour" range:"0..60 min"` // that it runs in each hour
	Cycle                 *q.Duration    `toml:"cycle" range:"positive"`             // one on-off cycle; at most the segment a code tests
	OnTime                *q.Duration    `toml:"on_time"`                            // of each cycle
	DefrostMinutes        *q.Duration    `toml:"defrost_minutes" range:"0..60 min"`  // per hour, at winter design, not exchanging
	Control               *ControlKind   `toml:"control"`
	ManualOverride        *bool          `toml:"manual_override"`
	ControlLabelled       *bool          `toml:"control_labelled"`            // says what it controls
	Certified             *bool          `toml:"certified"`                   // listed for airflow by a third party
	RatedFlow             *q.Flow        `toml:"rated_flow" range:"positive"` // listed flow ...
	RatedPressure         *q.Pressure    `toml:"rated_pressure"`              // ... at this external static pressure
	MeetsMakerDuctDesign  *bool          `toml:"ducts_by_maker_design"`       // ducts meet the maker's design criteria
	WillMeasure           *bool          `toml:"flow_to_be_measured"`         // installed flow will be measured
	SupplyFan             []FanPoint     `toml:"supply_fan"`
	ExtractFan            []FanPoint     `toml:"extract_fan"`
	Power                 *q.Power       `toml:"power"`                // electric, all fans at the stated flows
	Sensible              *q.Ratio       `toml:"sensible_recovery"`    // sensible recovery efficiency ...
	SensibleAt            *q.Temperature `toml:"sensible_recovery_at"` // ... at this outdoor temperature
	Latent                *q.Ratio       `toml:"latent_recovery"`      // latent recovery or moisture transfer ratio
	ExhaustTransfer       *q.Ratio       `toml:"exhaust_air_transfer"` // exhaust air that passes into the supply air
	Frost                 *FrostKind     `toml:"frost_protection"`
	FrostTo               *q.Temperature `toml:"frost_protection_to"` // lowest outdoor temperature it protects at
	PreheatTo             *q.Temperature `toml:"preheat_to"`          // that a preheater brings outdoor air to before the core
	Drain                 *DrainKind     `toml:"drain"`
	DrainSize             *q.Length      `toml:"drain_size" range:"positive"` // nominal
	DrainSlope            *q.Slope       `toml:"drain_slope" range:"any"`     // falling away from the unit; negative when it rises
	DrainTrap             *bool          `toml:"drain_trap"`
	Loudness              *q.Loudness    `toml:"loudness"`
	Supply                *SupplyJoint   `toml:"supply_joins"`
	Interlock             *bool          `toml:"interlock"`  // furnace fan runs with the ventilator
	Continuous            *bool          `toml:"continuous"` // rated for continuous duty
	Isolated              *bool          `toml:"vibration_isolated"`
	DistributesToBedrooms *bool          `toml:"supplies_every_bedroom"`
	JoinUpstream          *q.Length      `toml:"joint_upstream_of_blower"` // along the return duct
	Width                 *q.Length      `toml:"width" range:"positive"`   // of the cabinet
	Depth                 *q.Length      `toml:"depth" range:"positive"`
	Height                *q.Length      `toml:"height" range:"positive"`
	Low                   *Setting       `toml:"low"` // reduced setting; supply_flow and extract_flow are the normal one
	Boost                 *Setting       `toml:"boost"`
	Maximum               *Setting       `toml:"maximum"` // the highest that its control or its installer can choose
	Filters               []*Filter      `toml:"filter"`
	Access                *Access        `toml:"access"`
}

// Setting is what a ventilator moves at another than its normal setting, and what
// its fans can do there: curves of this setting, or the speed at which fan laws
// turn the curves of the normal one into those of this.
type Setting struct {
	document.Ref `toml:"-"`

	SupplyFlow  *q.Flow    `toml:"supply_flow"`
	ExtractFlow *q.Flow    `toml:"extract_flow"`
	SupplyFan   []FanPoint `toml:"supply_fan"`
	ExtractFan  []FanPoint `toml:"extract_fan"`
	FanSpeed    *q.Ratio   `toml:"fan_speed" range:"5 %..2000 %"` // of both fans, as a share of that of the normal curves
}

// Settings gives the settings of a ventilator beside its normal one, by name, in
// the order of rising flow; those that the file leaves out are nil.
func (v *Ventilator) Settings() []NamedSetting {
	return []NamedSetting{{"low", v.Low}, {"boost", v.Boost}, {"maximum", v.Maximum}}
}

// NamedSetting is a setting with the key that holds it.
type NamedSetting struct {
	Name string
	*Setting
}

// FanPoint is one point of a fan curve in standard air: the flow that the fan moves
// against a static pressure. The points of a curve stand in the order of rising flow.
type FanPoint struct {
	document.Ref `toml:"-"`

	Flow     q.Flow     `toml:"flow,required"`
	Pressure q.Pressure `toml:"pressure,required"`
}

// Filter is one filter of a ventilator.
type Filter struct {
	document.Ref `toml:"-"`

	Airstream       *Airstream  `toml:"airstream"`
	MERV            *int        `toml:"merv" range:"1..20"`
	UpstreamOfCore  *bool       `toml:"upstream_of_core"`
	ToolFree        *bool       `toml:"tool_free"`
	Reach           *q.Length   `toml:"reach"` // height of the filter door above the standing surface
	ServiceInterval *q.Duration `toml:"service_interval" range:"positive"`
	PullSpace       *q.Length   `toml:"pull_space"`              // clear space in the direction it slides out
	Length          *q.Length   `toml:"length" range:"positive"` // of the filter, in the direction it slides out
}

// Access is how a ventilator is reached and served.
type Access struct {
	document.Ref `toml:"-"`

	WorkingDepth        *q.Length `toml:"working_depth"` // level space in front of the control side
	WorkingWidth        *q.Length `toml:"working_width"`
	WorkingHeight       *q.Length `toml:"working_height"`
	DoorWidth           *q.Length `toml:"door_width" range:"positive"`
	DoorHeight          *q.Length `toml:"door_height" range:"positive"`
	PassageLength       *q.Length `toml:"passage_length"`
	PassageWidth        *q.Length `toml:"passage_width"`
	PassageHeight       *q.Length `toml:"passage_height"`
	PassageFloor        *q.Length `toml:"passage_floor_width"`            // continuous solid floor
	OpeningWidth        *q.Length `toml:"opening_width" range:"positive"` // clear, for attics; rough framed under floors
	OpeningLength       *q.Length `toml:"opening_length" range:"positive"`
	ThroughOpening      *bool     `toml:"served_through_opening"`
	RemovesConstruction *bool     `toml:"blocked_by_construction"` // must permanent construction or other equipment come out?
	Light               *bool     `toml:"light"`
	LightSwitch         *bool     `toml:"light_switch_at_entry"`
	Receptacle          *bool     `toml:"receptacle"`
	ReceptacleDistance  *q.Length `toml:"receptacle_distance"` // from the unit
	ReachHeight         *q.Length `toml:"reach_height"`        // of what is serviced, above the standing surface
	HeadClearance       *q.Length `toml:"clear_height_below"`  // under a hung unit
	OverWalkingArea     *bool     `toml:"over_walking_area"`
	AboveGround         *q.Length `toml:"above_ground"` // under-floor unit
	InElectricalSpace   *bool     `toml:"in_electrical_working_space"`
}

// Terminal is a grille or valve in a room.
type Terminal struct {
	Thing

	Airstream    Airstream   `toml:"airstream,required"`
	Room         *Link[Room] `toml:"room"`
	Flow         *q.Flow     `toml:"flow"`
	Loss         *q.Pressure `toml:"loss"`        // of the grille or valve ...
	LossFlow     *q.Flow     `toml:"loss_at"`     // flow at which the loss is stated
	AboveFloor   *q.Length   `toml:"above_floor"` // to the centre
	Diameter     *q.Length   `toml:"diameter" range:"positive"`
	FromReturn   *q.Length   `toml:"from_return_grille"` // nearest return grille
	FromCooktop  *q.Length   `toml:"from_cooktop"`
	GreaseFilter *bool       `toml:"grease_filter"`
}

// Duct is one run between two things: opening, ventilator, terminal, or duct.
type Duct struct {
	Thing

	Airstream     Airstream            `toml:"airstream,required"`
	From          *string              `toml:"from"` // id where the air enters
	To            *string              `toml:"to"`   // id where the air leaves
	Material      *Material            `toml:"material"`
	Diameter      *q.Length            `toml:"diameter" range:"positive"`
	Width         *q.Length            `toml:"width" range:"positive"`
	Height        *q.Length            `toml:"height" range:"positive"`
	Length        *q.Length            `toml:"length"`                 // along the centre line, without fittings
	FlatOval      *bool                `toml:"flat_oval"`              // width and height are the axes of an oval
	Compression   *q.Ratio             `toml:"compression"`            // of flexible duct, against fully stretched
	Flow          *q.Flow              `toml:"flow"`                   // design flow
	Elbows        *int                 `toml:"elbows" range:"0..1000"` // number of 90 degree elbows
	Fittings      []*Fitting           `toml:"fitting"`
	ExtraLoss     *q.Pressure          `toml:"extra_loss"`    // of filters, heaters, silencers in the run ...
	ExtraLossFlow *q.Flow              `toml:"extra_loss_at"` // ... at this flow
	Insulation    *q.ThermalResistance `toml:"insulation"`
	VaporRetarder *bool                `toml:"vapor_retarder"`
	Place         *DuctPlace           `toml:"place"` // coldest space it runs through
	Slope         *q.Slope             `toml:"slope"`
	SlopesTo      *SlopeEnd            `toml:"slopes_to"` // the end that lies lower
	Sealed        *bool                `toml:"sealed"`
	Supported     *bool                `toml:"supported"`
	Over          *DuctOver            `toml:"over"` // what it passes over
}

// Fitting is a number of like fittings in a duct.
type Fitting struct {
	document.Ref `toml:"-"`

	Kind             string    `toml:"kind,required"`
	Count            *int      `toml:"count" range:"1..1000"`        // how many alike
	LossCoefficient  *float64  `toml:"loss_coefficient" range:"any"` // of one, on the velocity pressure of the duct
	EquivalentLength *q.Length `toml:"equivalent_length"`            // of one
}

// Appliance is fuel-burning or exhaust equipment that shares the house air.
type Appliance struct {
	Thing

	Kind          ApplianceKind `toml:"kind,required"`
	Room          *Link[Room]   `toml:"room"`
	Fuel          *Fuel         `toml:"fuel"`
	Vent          *VentKind     `toml:"vent"`
	FuelInput     *q.Power      `toml:"fuel_input"`   // of the burner
	Flow          *q.Flow       `toml:"flow"`         // exhaust flow of a hood, dryer or bath fan
	MakeupFlow    *q.Flow       `toml:"makeup_flow"`  // supplied while the appliance runs
	ConnectedTo   *string       `toml:"connected_to"` // id of a ventilator whose ducts it shares
	DuctMaterial  *Material     `toml:"duct_material"`
	Discharge     *Discharge    `toml:"discharge"`
	PressureLimit *q.Pressure   `toml:"pressure_limit"` // depressurization that it tolerates, a positive figure
}

// Commissioning is what was measured.
type Commissioning struct {
	document.Ref `toml:"-"`

	Date            *string     `toml:"date"` // such as "2026-03-31"
	Instrument      *string     `toml:"instrument"`
	Accuracy        *q.Ratio    `toml:"accuracy"` // of the reading
	SupplyFlow      *q.Flow     `toml:"supply_flow"`
	ExtractFlow     *q.Flow     `toml:"extract_flow"`
	SupplyPressure  *q.Pressure `toml:"supply_pressure" range:"any"`  // external static pressure at the unit; suction is negative
	ExtractPressure *q.Pressure `toml:"extract_pressure" range:"any"` // external static pressure at the unit; suction is negative
	Posted          *bool       `toml:"certificate_posted"`
	Measured        []*Measured `toml:"measured"`
}

// Measured is one measured terminal flow.
type Measured struct {
	document.Ref `toml:"-"`

	Terminal *Link[Terminal] `toml:"terminal,required"`
	Flow     *q.Flow         `toml:"flow"`
}

// StatedDistance is a distance as dimensioned on a drawing. It is used in place
// of geometry, and reported as stated.
type StatedDistance struct {
	document.Ref `toml:"-"`

	Between    []string  `toml:"between,required"` // two ids
	Distance   *q.Length `toml:"distance"`         // shortest, in any direction
	Horizontal *q.Length `toml:"horizontal"`
	Rise       *q.Length `toml:"rise" range:"any"` // bottom of the second above the top of the first; negative below
	Drawing    *string   `toml:"drawing"`
}

// Variance is an accepted departure from a rule.
type Variance struct {
	document.Ref `toml:"-"`

	Rule    string  `toml:"rule,required"`
	Subject *string `toml:"subject"` // id of the thing it is for; all when not given
	Reason  string  `toml:"reason,required"`
	By      string  `toml:"by,required"` // a role
	Until   *string `toml:"until"`       // last day on which it counts, such as "2026-03-31"
}
