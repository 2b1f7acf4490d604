package quantity

// Each type reads itself from the text of a TOML key and prints itself in SI.

// UnmarshalTOML reads a text such as "12 ft 4 in"; any other value is an error.
func (x *Length) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Length) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "2150 ft2"; any other value is an error.
func (x *Area) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Area) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "17200 ft3"; any other value is an error.
func (x *Volume) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Volume) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "80 cfm"; any other value is an error.
func (x *Flow) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Flow) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "600 fpm"; any other value is an error.
func (x *Velocity) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Velocity) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "0.25 inwc"; any other value is an error.
func (x *Pressure) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Pressure) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "-5 F"; any other value is an error.
func (x *Temperature) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Temperature) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "10 K"; any other value is an error.
func (x *TemperatureDifference) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x TemperatureDifference) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "60 W"; any other value is an error.
func (x *Power) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Power) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "20 min"; any other value is an error.
func (x *Duration) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Duration) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "3 ACH"; any other value is an error.
func (x *AirChange) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x AirChange) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "1.2 cfm/W"; any other value is an error.
func (x *Efficacy) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Efficacy) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "65 %"; any other value is an error.
func (x *Ratio) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Ratio) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "R-8"; any other value is an error.
func (x *ThermalResistance) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x ThermalResistance) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "1 sone"; any other value is an error.
func (x *Loudness) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Loudness) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "45 dBA"; any other value is an error.
func (x *SoundLevel) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x SoundLevel) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "1/4 in/ft"; any other value is an error.
func (x *Slope) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Slope) String() string { return Format(x, SI) }

// UnmarshalTOML reads a text such as "60 lb"; any other value is an error.
func (x *Mass) UnmarshalTOML(value any) error { return decode(x, value) }

// String prints in SI.
func (x Mass) String() string { return Format(x, SI) }
