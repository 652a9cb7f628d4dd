package physics

// Params are what sets one car's loop apart from another's. Their units, ranges
// and reasons are data: see Table. Resistances are kPa/(L/s)²; that of a part
// counts from where a hose enters it.
type Params struct {
	EngineMetalKJK   float64 // kJ/K
	EngineWaterL     float64 // L
	HeadHeatShare    float64 // of the engine's heat, where head and block part
	HeadMetalShare   float64 // of its metal and water
	HeadBlockWK      float64 // W/K
	OilHeatShare     float64 // of the engine's heat, where coolant cools the oil
	OilKJK           float64 // kJ/K
	OilUAWK          float64 // W/K
	EngineUAWK       float64 // W/K
	EngineLossWK     float64 // W/K
	EngineRamWK      float64 // W/K per km/h
	IdleHeatKW       float64 // kW
	RaisedHeatKW     float64 // kW
	RoadHeatKW       float64 // kW
	ColdExtra        float64 // of the heat
	PumpShutOffKPa   float64 // kPa
	PumpDrop         float64 // kPa/(L/s)²
	EngineDrop       float64 // kPa/(L/s)²
	RadiatorDrop     float64 // kPa/(L/s)²
	HeaterDrop       float64 // kPa/(L/s)²
	OilCoolerDrop    float64 // kPa/(L/s)²
	ThermostatDrop   float64 // kPa/(L/s)²
	BypassDrop       float64 // kPa/(L/s)²
	MainHoseDrop     float64 // kPa/(L/s)²
	FeedDrop         float64 // kPa/(L/s)²
	BleedDrop        float64 // kPa/(L/s)²
	OutletRatingC    float64 // °C
	InletRatingC     float64 // °C
	HeatedRatingC    float64 // °C
	WaxHeaterK       float64 // K
	BlockOverHeadK   float64 // K
	OpenSpanK        float64 // K
	WaxLagS          float64 // s
	WaxPlayK         float64 // K
	MainLeak         float64 // of the area
	BypassLeak       float64 // of the area
	RadiatorWaterL   float64 // L
	RadiatorMetalKJK float64 // kJ/K
	RadiatorUAWK     float64 // W/K
	RadiatorStillWK  float64 // W/K
	DraughtKgS       float64 // kg/s
	FanKgS           float64 // kg/s
	RamKgS           float64 // kg/s per km/h
	FanOnC           float64 // °C
	FanSpanK         float64 // K
	ClutchOnC        float64 // °C
	ClutchSpanK      float64 // K
	HeaterUAWK       float64 // W/K
	BlowerKgS        float64 // kg/s
	HousingColdPart  float64 // of the way from the mixed coolant to the lower hose's, at an inlet thermostat
	DuctPart         float64 // of the engine's excess over ambient
	HeaterWaterL     float64 // L
	MainHoseWaterL   float64 // L
	MainHoseLossWK   float64 // W/K
	ThinHoseWaterL   float64 // L
	ThinHoseLossWK   float64 // W/K
	DeadLegWK        float64 // W/K
	RisingWK         float64 // W/K
	CapKPa           float64 // kPa
}
