// Code generated from internal/tables; DO NOT EDIT.

package units

var kinds = [...]Kind{
	{"Length", "length", Dimension{2, 0, 0, 0, 0, 0}, "m", "", "length", false},
	{"Area", "area", Dimension{4, 0, 0, 0, 0, 0}, "m²", "", "area", false},
	{"Volume", "volume", Dimension{6, 0, 0, 0, 0, 0}, "m³", "", "volume", false},
	{"Mass", "mass", Dimension{0, 2, 0, 0, 0, 0}, "kg", "", "mass", false},
	{"Time", "time", Dimension{0, 0, 2, 0, 0, 0}, "s", "", "si", false},
	{"Velocity", "velocity", Dimension{2, 0, -2, 0, 0, 0}, "m/s", "", "si", false},
	{"Acceleration", "acceleration", Dimension{2, 0, -4, 0, 0, 0}, "m/s²", "", "one", false},
	{"Frequency", "frequency", Dimension{0, 0, -2, 0, 0, 0}, "Hz", "", "si", false},
	{"AngularFrequency", "angular frequency", Dimension{0, 0, -2, 0, 0, 2}, "rad/s", "angular", "si", false},
	{"Level", "level difference", Dimension{0, 0, 0, 0, 0, 0}, "dB", "log", "one", false},
	{"VoltageLevel", "voltage level", Dimension{0, 0, 0, 0, 0, 0}, "dBV", "point", "one", false},
	{"Angle", "angle", Dimension{0, 0, 0, 0, 0, 2}, "rad", "angle", "degrees", false},
	{"Force", "force", Dimension{2, 2, -4, 0, 0, 0}, "N", "", "si", true},
	{"Pressure", "pressure", Dimension{-2, 2, -4, 0, 0, 0}, "Pa", "", "si", false},
	{"EnergyDensity", "energy density", Dimension{-2, 2, -4, 0, 0, 0}, "J/m³", "", "si", false},
	{"Energy", "energy", Dimension{4, 2, -4, 0, 0, 0}, "J", "", "si", true},
	{"Power", "power", Dimension{4, 2, -6, 0, 0, 0}, "W", "", "si", true},
	{"Voltage", "voltage", Dimension{4, 2, -6, -2, 0, 0}, "V", "", "si", true},
	{"Current", "current", Dimension{0, 0, 0, 2, 0, 0}, "A", "", "si", false},
	{"Charge", "charge", Dimension{0, 0, 2, 2, 0, 0}, "C", "", "si", true},
	{"Resistance", "resistance", Dimension{4, 2, -6, -4, 0, 0}, "Ω", "", "si", true},
	{"Conductance", "conductance", Dimension{-4, -2, 6, 4, 0, 0}, "S", "", "si", true},
	{"Inductance", "inductance", Dimension{4, 2, -4, -4, 0, 0}, "H", "", "si", true},
	{"Capacitance", "capacitance", Dimension{-4, -2, 8, 4, 0, 0}, "F", "", "si", true},
	{"Flux", "magnetic flux", Dimension{4, 2, -4, -2, 0, 0}, "Wb", "", "si", true},
	{"FluxDensity", "flux density", Dimension{0, 2, -4, -2, 0, 0}, "T", "", "si", true},
	{"FieldStrength", "field strength", Dimension{-2, 0, 0, 2, 0, 0}, "A/m", "", "si", false},
	{"MagneticMoment", "magnetic moment", Dimension{4, 0, 0, 2, 0, 0}, "A·m²", "", "si", false},
	{"Density", "density", Dimension{-6, 2, 0, 0, 0, 0}, "kg/m³", "", "one", false},
	{"Resistivity", "resistivity", Dimension{6, 2, -6, -4, 0, 0}, "Ω·m", "", "si", false},
	{"Conductivity", "conductivity", Dimension{-6, -2, 6, 4, 0, 0}, "S/m", "", "si", false},
	{"ResistancePerLength", "resistance per length", Dimension{2, 2, -6, -4, 0, 0}, "Ω/m", "", "si", false},
	{"CapacitancePerLength", "capacitance per length", Dimension{-6, -2, 8, 4, 0, 0}, "F/m", "", "si", false},
	{"InductancePerLength", "inductance per length", Dimension{2, 2, -4, -4, 0, 0}, "H/m", "", "si", false},
	{"MassPerLength", "mass per length", Dimension{-2, 2, 0, 0, 0, 0}, "kg/m", "", "massperlength", false},
	{"PerLength", "count per length", Dimension{-2, 0, 0, 0, 0, 0}, "1/m", "", "perlength", false},
	{"CurrentDensity", "current density", Dimension{-4, 0, 0, 2, 0, 0}, "A/m²", "", "persquare", false},
	{"Temperature", "temperature", Dimension{0, 0, 0, 0, 2, 0}, "K", "point", "celsius", false},
	{"TemperatureDifference", "temperature difference", Dimension{0, 0, 0, 0, 2, 0}, "K", "", "si", false},
	{"TemperatureCoefficient", "temperature coefficient", Dimension{0, 0, 0, 0, -2, 0}, "1/K", "", "one", false},
	{"VoltageNoise", "voltage noise density", Dimension{4, 2, -5, -2, 0, 0}, "V/√Hz", "root", "si", false},
	{"CurrentNoise", "current noise density", Dimension{0, 0, 1, 2, 0, 0}, "A/√Hz", "root", "si", false},
}

// Length is a length, held in m.
type Length float64

// SI returns the value in m.
func (x Length) SI() float64 { return float64(x) }

// Kind tells that x is a length.
func (x Length) Kind() Kind { return kinds[0] }

// String writes x with a sensible unit and four significant digits.
func (x Length) String() string { return Text(float64(x), kinds[0]) }

// ParseLength reads a length such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseLength(text string) (Length, error) {
	value, err := parseKind(text, kinds[0])
	return Length(value), err
}

// Area is an area, held in m².
type Area float64

// SI returns the value in m².
func (x Area) SI() float64 { return float64(x) }

// Kind tells that x is an area.
func (x Area) Kind() Kind { return kinds[1] }

// String writes x with a sensible unit and four significant digits.
func (x Area) String() string { return Text(float64(x), kinds[1]) }

// ParseArea reads an area such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseArea(text string) (Area, error) {
	value, err := parseKind(text, kinds[1])
	return Area(value), err
}

// Volume is a volume, held in m³.
type Volume float64

// SI returns the value in m³.
func (x Volume) SI() float64 { return float64(x) }

// Kind tells that x is a volume.
func (x Volume) Kind() Kind { return kinds[2] }

// String writes x with a sensible unit and four significant digits.
func (x Volume) String() string { return Text(float64(x), kinds[2]) }

// ParseVolume reads a volume such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseVolume(text string) (Volume, error) {
	value, err := parseKind(text, kinds[2])
	return Volume(value), err
}

// Mass is a mass, held in kg.
type Mass float64

// SI returns the value in kg.
func (x Mass) SI() float64 { return float64(x) }

// Kind tells that x is a mass.
func (x Mass) Kind() Kind { return kinds[3] }

// String writes x with a sensible unit and four significant digits.
func (x Mass) String() string { return Text(float64(x), kinds[3]) }

// ParseMass reads a mass such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseMass(text string) (Mass, error) {
	value, err := parseKind(text, kinds[3])
	return Mass(value), err
}

// Time is a time, held in s.
type Time float64

// SI returns the value in s.
func (x Time) SI() float64 { return float64(x) }

// Kind tells that x is a time.
func (x Time) Kind() Kind { return kinds[4] }

// String writes x with a sensible unit and four significant digits.
func (x Time) String() string { return Text(float64(x), kinds[4]) }

// ParseTime reads a time such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseTime(text string) (Time, error) {
	value, err := parseKind(text, kinds[4])
	return Time(value), err
}

// Velocity is a velocity, held in m/s.
type Velocity float64

// SI returns the value in m/s.
func (x Velocity) SI() float64 { return float64(x) }

// Kind tells that x is a velocity.
func (x Velocity) Kind() Kind { return kinds[5] }

// String writes x with a sensible unit and four significant digits.
func (x Velocity) String() string { return Text(float64(x), kinds[5]) }

// ParseVelocity reads a velocity such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseVelocity(text string) (Velocity, error) {
	value, err := parseKind(text, kinds[5])
	return Velocity(value), err
}

// Acceleration is an acceleration, held in m/s².
type Acceleration float64

// SI returns the value in m/s².
func (x Acceleration) SI() float64 { return float64(x) }

// Kind tells that x is an acceleration.
func (x Acceleration) Kind() Kind { return kinds[6] }

// String writes x with a sensible unit and four significant digits.
func (x Acceleration) String() string { return Text(float64(x), kinds[6]) }

// ParseAcceleration reads an acceleration such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseAcceleration(text string) (Acceleration, error) {
	value, err := parseKind(text, kinds[6])
	return Acceleration(value), err
}

// Frequency is a frequency, held in Hz.
type Frequency float64

// SI returns the value in Hz.
func (x Frequency) SI() float64 { return float64(x) }

// Kind tells that x is a frequency.
func (x Frequency) Kind() Kind { return kinds[7] }

// String writes x with a sensible unit and four significant digits.
func (x Frequency) String() string { return Text(float64(x), kinds[7]) }

// ParseFrequency reads a frequency such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseFrequency(text string) (Frequency, error) {
	value, err := parseKind(text, kinds[7])
	return Frequency(value), err
}

// AngularFrequency is an angular frequency, held in rad/s.
type AngularFrequency float64

// SI returns the value in rad/s.
func (x AngularFrequency) SI() float64 { return float64(x) }

// Kind tells that x is an angular frequency.
func (x AngularFrequency) Kind() Kind { return kinds[8] }

// String writes x with a sensible unit and four significant digits.
func (x AngularFrequency) String() string { return Text(float64(x), kinds[8]) }

// ParseAngularFrequency reads an angular frequency such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseAngularFrequency(text string) (AngularFrequency, error) {
	value, err := parseKind(text, kinds[8])
	return AngularFrequency(value), err
}

// Level is a level difference, held in dB.
type Level float64

// SI returns the value in dB.
func (x Level) SI() float64 { return float64(x) }

// Kind tells that x is a level difference.
func (x Level) Kind() Kind { return kinds[9] }

// String writes x with a sensible unit and four significant digits.
func (x Level) String() string { return Text(float64(x), kinds[9]) }

// ParseLevel reads a level difference such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseLevel(text string) (Level, error) {
	value, err := parseKind(text, kinds[9])
	return Level(value), err
}

// VoltageLevel is a voltage level, held in dBV.
type VoltageLevel float64

// SI returns the value in dBV.
func (x VoltageLevel) SI() float64 { return float64(x) }

// Kind tells that x is a voltage level.
func (x VoltageLevel) Kind() Kind { return kinds[10] }

// String writes x with a sensible unit and four significant digits.
func (x VoltageLevel) String() string { return Text(float64(x), kinds[10]) }

// ParseVoltageLevel reads a voltage level such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseVoltageLevel(text string) (VoltageLevel, error) {
	value, err := parseKind(text, kinds[10])
	return VoltageLevel(value), err
}

// Angle is an angle, held in rad.
type Angle float64

// SI returns the value in rad.
func (x Angle) SI() float64 { return float64(x) }

// Kind tells that x is an angle.
func (x Angle) Kind() Kind { return kinds[11] }

// String writes x with a sensible unit and four significant digits.
func (x Angle) String() string { return Text(float64(x), kinds[11]) }

// ParseAngle reads an angle such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseAngle(text string) (Angle, error) {
	value, err := parseKind(text, kinds[11])
	return Angle(value), err
}

// Force is a force, held in N.
type Force float64

// SI returns the value in N.
func (x Force) SI() float64 { return float64(x) }

// Kind tells that x is a force.
func (x Force) Kind() Kind { return kinds[12] }

// String writes x with a sensible unit and four significant digits.
func (x Force) String() string { return Text(float64(x), kinds[12]) }

// ParseForce reads a force such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseForce(text string) (Force, error) {
	value, err := parseKind(text, kinds[12])
	return Force(value), err
}

// Pressure is a pressure, held in Pa.
type Pressure float64

// SI returns the value in Pa.
func (x Pressure) SI() float64 { return float64(x) }

// Kind tells that x is a pressure.
func (x Pressure) Kind() Kind { return kinds[13] }

// String writes x with a sensible unit and four significant digits.
func (x Pressure) String() string { return Text(float64(x), kinds[13]) }

// ParsePressure reads a pressure such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParsePressure(text string) (Pressure, error) {
	value, err := parseKind(text, kinds[13])
	return Pressure(value), err
}

// EnergyDensity is an energy density, held in J/m³.
type EnergyDensity float64

// SI returns the value in J/m³.
func (x EnergyDensity) SI() float64 { return float64(x) }

// Kind tells that x is an energy density.
func (x EnergyDensity) Kind() Kind { return kinds[14] }

// String writes x with a sensible unit and four significant digits.
func (x EnergyDensity) String() string { return Text(float64(x), kinds[14]) }

// ParseEnergyDensity reads an energy density such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseEnergyDensity(text string) (EnergyDensity, error) {
	value, err := parseKind(text, kinds[14])
	return EnergyDensity(value), err
}

// Energy is an energy, held in J.
type Energy float64

// SI returns the value in J.
func (x Energy) SI() float64 { return float64(x) }

// Kind tells that x is an energy.
func (x Energy) Kind() Kind { return kinds[15] }

// String writes x with a sensible unit and four significant digits.
func (x Energy) String() string { return Text(float64(x), kinds[15]) }

// ParseEnergy reads an energy such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseEnergy(text string) (Energy, error) {
	value, err := parseKind(text, kinds[15])
	return Energy(value), err
}

// Power is a power, held in W.
type Power float64

// SI returns the value in W.
func (x Power) SI() float64 { return float64(x) }

// Kind tells that x is a power.
func (x Power) Kind() Kind { return kinds[16] }

// String writes x with a sensible unit and four significant digits.
func (x Power) String() string { return Text(float64(x), kinds[16]) }

// ParsePower reads a power such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParsePower(text string) (Power, error) {
	value, err := parseKind(text, kinds[16])
	return Power(value), err
}

// Voltage is a voltage, held in V.
type Voltage float64

// SI returns the value in V.
func (x Voltage) SI() float64 { return float64(x) }

// Kind tells that x is a voltage.
func (x Voltage) Kind() Kind { return kinds[17] }

// String writes x with a sensible unit and four significant digits.
func (x Voltage) String() string { return Text(float64(x), kinds[17]) }

// ParseVoltage reads a voltage such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseVoltage(text string) (Voltage, error) {
	value, err := parseKind(text, kinds[17])
	return Voltage(value), err
}

// Current is a current, held in A.
type Current float64

// SI returns the value in A.
func (x Current) SI() float64 { return float64(x) }

// Kind tells that x is a current.
func (x Current) Kind() Kind { return kinds[18] }

// String writes x with a sensible unit and four significant digits.
func (x Current) String() string { return Text(float64(x), kinds[18]) }

// ParseCurrent reads a current such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseCurrent(text string) (Current, error) {
	value, err := parseKind(text, kinds[18])
	return Current(value), err
}

// Charge is a charge, held in C.
type Charge float64

// SI returns the value in C.
func (x Charge) SI() float64 { return float64(x) }

// Kind tells that x is a charge.
func (x Charge) Kind() Kind { return kinds[19] }

// String writes x with a sensible unit and four significant digits.
func (x Charge) String() string { return Text(float64(x), kinds[19]) }

// ParseCharge reads a charge such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseCharge(text string) (Charge, error) {
	value, err := parseKind(text, kinds[19])
	return Charge(value), err
}

// Resistance is a resistance, held in Ω.
type Resistance float64

// SI returns the value in Ω.
func (x Resistance) SI() float64 { return float64(x) }

// Kind tells that x is a resistance.
func (x Resistance) Kind() Kind { return kinds[20] }

// String writes x with a sensible unit and four significant digits.
func (x Resistance) String() string { return Text(float64(x), kinds[20]) }

// ParseResistance reads a resistance such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseResistance(text string) (Resistance, error) {
	value, err := parseKind(text, kinds[20])
	return Resistance(value), err
}

// Conductance is a conductance, held in S.
type Conductance float64

// SI returns the value in S.
func (x Conductance) SI() float64 { return float64(x) }

// Kind tells that x is a conductance.
func (x Conductance) Kind() Kind { return kinds[21] }

// String writes x with a sensible unit and four significant digits.
func (x Conductance) String() string { return Text(float64(x), kinds[21]) }

// ParseConductance reads a conductance such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseConductance(text string) (Conductance, error) {
	value, err := parseKind(text, kinds[21])
	return Conductance(value), err
}

// Inductance is an inductance, held in H.
type Inductance float64

// SI returns the value in H.
func (x Inductance) SI() float64 { return float64(x) }

// Kind tells that x is an inductance.
func (x Inductance) Kind() Kind { return kinds[22] }

// String writes x with a sensible unit and four significant digits.
func (x Inductance) String() string { return Text(float64(x), kinds[22]) }

// ParseInductance reads an inductance such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseInductance(text string) (Inductance, error) {
	value, err := parseKind(text, kinds[22])
	return Inductance(value), err
}

// Capacitance is a capacitance, held in F.
type Capacitance float64

// SI returns the value in F.
func (x Capacitance) SI() float64 { return float64(x) }

// Kind tells that x is a capacitance.
func (x Capacitance) Kind() Kind { return kinds[23] }

// String writes x with a sensible unit and four significant digits.
func (x Capacitance) String() string { return Text(float64(x), kinds[23]) }

// ParseCapacitance reads a capacitance such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseCapacitance(text string) (Capacitance, error) {
	value, err := parseKind(text, kinds[23])
	return Capacitance(value), err
}

// Flux is a magnetic flux, held in Wb.
type Flux float64

// SI returns the value in Wb.
func (x Flux) SI() float64 { return float64(x) }

// Kind tells that x is a magnetic flux.
func (x Flux) Kind() Kind { return kinds[24] }

// String writes x with a sensible unit and four significant digits.
func (x Flux) String() string { return Text(float64(x), kinds[24]) }

// ParseFlux reads a magnetic flux such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseFlux(text string) (Flux, error) {
	value, err := parseKind(text, kinds[24])
	return Flux(value), err
}

// FluxDensity is a flux density, held in T.
type FluxDensity float64

// SI returns the value in T.
func (x FluxDensity) SI() float64 { return float64(x) }

// Kind tells that x is a flux density.
func (x FluxDensity) Kind() Kind { return kinds[25] }

// String writes x with a sensible unit and four significant digits.
func (x FluxDensity) String() string { return Text(float64(x), kinds[25]) }

// ParseFluxDensity reads a flux density such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseFluxDensity(text string) (FluxDensity, error) {
	value, err := parseKind(text, kinds[25])
	return FluxDensity(value), err
}

// FieldStrength is a field strength, held in A/m.
type FieldStrength float64

// SI returns the value in A/m.
func (x FieldStrength) SI() float64 { return float64(x) }

// Kind tells that x is a field strength.
func (x FieldStrength) Kind() Kind { return kinds[26] }

// String writes x with a sensible unit and four significant digits.
func (x FieldStrength) String() string { return Text(float64(x), kinds[26]) }

// ParseFieldStrength reads a field strength such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseFieldStrength(text string) (FieldStrength, error) {
	value, err := parseKind(text, kinds[26])
	return FieldStrength(value), err
}

// MagneticMoment is a magnetic moment, held in A·m².
type MagneticMoment float64

// SI returns the value in A·m².
func (x MagneticMoment) SI() float64 { return float64(x) }

// Kind tells that x is a magnetic moment.
func (x MagneticMoment) Kind() Kind { return kinds[27] }

// String writes x with a sensible unit and four significant digits.
func (x MagneticMoment) String() string { return Text(float64(x), kinds[27]) }

// ParseMagneticMoment reads a magnetic moment such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseMagneticMoment(text string) (MagneticMoment, error) {
	value, err := parseKind(text, kinds[27])
	return MagneticMoment(value), err
}

// Density is a density, held in kg/m³.
type Density float64

// SI returns the value in kg/m³.
func (x Density) SI() float64 { return float64(x) }

// Kind tells that x is a density.
func (x Density) Kind() Kind { return kinds[28] }

// String writes x with a sensible unit and four significant digits.
func (x Density) String() string { return Text(float64(x), kinds[28]) }

// ParseDensity reads a density such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseDensity(text string) (Density, error) {
	value, err := parseKind(text, kinds[28])
	return Density(value), err
}

// Resistivity is a resistivity, held in Ω·m.
type Resistivity float64

// SI returns the value in Ω·m.
func (x Resistivity) SI() float64 { return float64(x) }

// Kind tells that x is a resistivity.
func (x Resistivity) Kind() Kind { return kinds[29] }

// String writes x with a sensible unit and four significant digits.
func (x Resistivity) String() string { return Text(float64(x), kinds[29]) }

// ParseResistivity reads a resistivity such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseResistivity(text string) (Resistivity, error) {
	value, err := parseKind(text, kinds[29])
	return Resistivity(value), err
}

// Conductivity is a conductivity, held in S/m.
type Conductivity float64

// SI returns the value in S/m.
func (x Conductivity) SI() float64 { return float64(x) }

// Kind tells that x is a conductivity.
func (x Conductivity) Kind() Kind { return kinds[30] }

// String writes x with a sensible unit and four significant digits.
func (x Conductivity) String() string { return Text(float64(x), kinds[30]) }

// ParseConductivity reads a conductivity such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseConductivity(text string) (Conductivity, error) {
	value, err := parseKind(text, kinds[30])
	return Conductivity(value), err
}

// ResistancePerLength is a resistance per length, held in Ω/m.
type ResistancePerLength float64

// SI returns the value in Ω/m.
func (x ResistancePerLength) SI() float64 { return float64(x) }

// Kind tells that x is a resistance per length.
func (x ResistancePerLength) Kind() Kind { return kinds[31] }

// String writes x with a sensible unit and four significant digits.
func (x ResistancePerLength) String() string { return Text(float64(x), kinds[31]) }

// ParseResistancePerLength reads a resistance per length such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseResistancePerLength(text string) (ResistancePerLength, error) {
	value, err := parseKind(text, kinds[31])
	return ResistancePerLength(value), err
}

// CapacitancePerLength is a capacitance per length, held in F/m.
type CapacitancePerLength float64

// SI returns the value in F/m.
func (x CapacitancePerLength) SI() float64 { return float64(x) }

// Kind tells that x is a capacitance per length.
func (x CapacitancePerLength) Kind() Kind { return kinds[32] }

// String writes x with a sensible unit and four significant digits.
func (x CapacitancePerLength) String() string { return Text(float64(x), kinds[32]) }

// ParseCapacitancePerLength reads a capacitance per length such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseCapacitancePerLength(text string) (CapacitancePerLength, error) {
	value, err := parseKind(text, kinds[32])
	return CapacitancePerLength(value), err
}

// InductancePerLength is an inductance per length, held in H/m.
type InductancePerLength float64

// SI returns the value in H/m.
func (x InductancePerLength) SI() float64 { return float64(x) }

// Kind tells that x is an inductance per length.
func (x InductancePerLength) Kind() Kind { return kinds[33] }

// String writes x with a sensible unit and four significant digits.
func (x InductancePerLength) String() string { return Text(float64(x), kinds[33]) }

// ParseInductancePerLength reads an inductance per length such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseInductancePerLength(text string) (InductancePerLength, error) {
	value, err := parseKind(text, kinds[33])
	return InductancePerLength(value), err
}

// MassPerLength is a mass per length, held in kg/m.
type MassPerLength float64

// SI returns the value in kg/m.
func (x MassPerLength) SI() float64 { return float64(x) }

// Kind tells that x is a mass per length.
func (x MassPerLength) Kind() Kind { return kinds[34] }

// String writes x with a sensible unit and four significant digits.
func (x MassPerLength) String() string { return Text(float64(x), kinds[34]) }

// ParseMassPerLength reads a mass per length such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseMassPerLength(text string) (MassPerLength, error) {
	value, err := parseKind(text, kinds[34])
	return MassPerLength(value), err
}

// PerLength is a count per length, held in 1/m.
type PerLength float64

// SI returns the value in 1/m.
func (x PerLength) SI() float64 { return float64(x) }

// Kind tells that x is a count per length.
func (x PerLength) Kind() Kind { return kinds[35] }

// String writes x with a sensible unit and four significant digits.
func (x PerLength) String() string { return Text(float64(x), kinds[35]) }

// ParsePerLength reads a count per length such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParsePerLength(text string) (PerLength, error) {
	value, err := parseKind(text, kinds[35])
	return PerLength(value), err
}

// CurrentDensity is a current density, held in A/m².
type CurrentDensity float64

// SI returns the value in A/m².
func (x CurrentDensity) SI() float64 { return float64(x) }

// Kind tells that x is a current density.
func (x CurrentDensity) Kind() Kind { return kinds[36] }

// String writes x with a sensible unit and four significant digits.
func (x CurrentDensity) String() string { return Text(float64(x), kinds[36]) }

// ParseCurrentDensity reads a current density such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseCurrentDensity(text string) (CurrentDensity, error) {
	value, err := parseKind(text, kinds[36])
	return CurrentDensity(value), err
}

// Temperature is a temperature, held in K.
type Temperature float64

// SI returns the value in K.
func (x Temperature) SI() float64 { return float64(x) }

// Kind tells that x is a temperature.
func (x Temperature) Kind() Kind { return kinds[37] }

// String writes x with a sensible unit and four significant digits.
func (x Temperature) String() string { return Text(float64(x), kinds[37]) }

// ParseTemperature reads a temperature such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseTemperature(text string) (Temperature, error) {
	value, err := parseKind(text, kinds[37])
	return Temperature(value), err
}

// TemperatureDifference is a temperature difference, held in K.
type TemperatureDifference float64

// SI returns the value in K.
func (x TemperatureDifference) SI() float64 { return float64(x) }

// Kind tells that x is a temperature difference.
func (x TemperatureDifference) Kind() Kind { return kinds[38] }

// String writes x with a sensible unit and four significant digits.
func (x TemperatureDifference) String() string { return Text(float64(x), kinds[38]) }

// ParseTemperatureDifference reads a temperature difference such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseTemperatureDifference(text string) (TemperatureDifference, error) {
	value, err := parseKind(text, kinds[38])
	return TemperatureDifference(value), err
}

// TemperatureCoefficient is a temperature coefficient, held in 1/K.
type TemperatureCoefficient float64

// SI returns the value in 1/K.
func (x TemperatureCoefficient) SI() float64 { return float64(x) }

// Kind tells that x is a temperature coefficient.
func (x TemperatureCoefficient) Kind() Kind { return kinds[39] }

// String writes x with a sensible unit and four significant digits.
func (x TemperatureCoefficient) String() string { return Text(float64(x), kinds[39]) }

// ParseTemperatureCoefficient reads a temperature coefficient such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseTemperatureCoefficient(text string) (TemperatureCoefficient, error) {
	value, err := parseKind(text, kinds[39])
	return TemperatureCoefficient(value), err
}

// VoltageNoise is a voltage noise density, held in V/√Hz.
type VoltageNoise float64

// SI returns the value in V/√Hz.
func (x VoltageNoise) SI() float64 { return float64(x) }

// Kind tells that x is a voltage noise density.
func (x VoltageNoise) Kind() Kind { return kinds[40] }

// String writes x with a sensible unit and four significant digits.
func (x VoltageNoise) String() string { return Text(float64(x), kinds[40]) }

// ParseVoltageNoise reads a voltage noise density such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseVoltageNoise(text string) (VoltageNoise, error) {
	value, err := parseKind(text, kinds[40])
	return VoltageNoise(value), err
}

// CurrentNoise is a current noise density, held in A/√Hz.
type CurrentNoise float64

// SI returns the value in A/√Hz.
func (x CurrentNoise) SI() float64 { return float64(x) }

// Kind tells that x is a current noise density.
func (x CurrentNoise) Kind() Kind { return kinds[41] }

// String writes x with a sensible unit and four significant digits.
func (x CurrentNoise) String() string { return Text(float64(x), kinds[41]) }

// ParseCurrentNoise reads a current noise density such as people write it, with its unit. It refuses text that
// is no number with a unit, and a unit of another kind.
func ParseCurrentNoise(text string) (CurrentNoise, error) {
	value, err := parseKind(text, kinds[41])
	return CurrentNoise(value), err
}
