package quantity

import "sync"

// foreign holds folded spellings from other habits, and the units they may mean.
var foreign = sync.OnceValue(func() map[string]string {
	return map[string]string{
		"feet": "ft", "foot": "ft", "inches": "in", "meter": "m", "meters": "m", "metre": "m", "metres": "m", "yards": "yd",
		"sqft": "ft2", "sf": "ft2", "squarefeet": "ft2", "sqin": "in2", "sqm": "m2",
		"cf": "ft3", "cuft": "ft3", "cubicfeet": "ft3", "liter": "L", "liters": "L", "litre": "L", "litres": "L",
		"ft3/min": "cfm", "cf/m": "cfm", "lps": "L/s", "cmh": "m3/h", "m3/hr": "m3/h", "mps": "m/s",
		"wc": "inwc", "wg": "inwc", "inwg": "inwc", "inh2o": "inwc", "iwc": "inwc", "pascal": "Pa", "pascals": "Pa",
		"fahrenheit": "F", "celsius": "C", "deg": "F C", "°": "F C", "degf": "F", "degc": "C", "°f": "F", "°c": "C", "kelvin": "K",
		"watt": "W", "watts": "W", "btu": "Btu/h", "btuh": "Btu/h", "btu/hr": "Btu/h", "mbh": "kBtu/h", "kbtuh": "kBtu/h",
		"sec": "s", "second": "s", "seconds": "s", "minute": "min", "minutes": "min", "mins": "min",
		"hr": "h", "hrs": "h", "hour": "h", "hours": "h", "day": "d", "days": "d",
		"ach50": "ACH", "airchanges": "ACH", "airchanges/h": "ACH", "percent": "%", "pct": "%",
		"db": "dBA", "db(a)": "dBA", "deltaf": "dF", "δf": "dF", "deltac": "dC", "δc": "dC", "δk": "K",
		"lbs": "lb", "pound": "lb", "pounds": "lb", "kgs": "kg", "kilograms": "kg",
	}
})
