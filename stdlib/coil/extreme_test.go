package coil

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"lode/stdlib/wire"
	"lode/units"
)

// This file asks windings from needles to plates, of one turn and of a hundred thousand, for everything that takes no argument,
// and for what takes one, with values from small to large.

// extremeWinding draws one, or none where the dimensions are refused.
func extremeWinding(t *testing.T, r *rand.Rand) (c Winding, ok bool) {
	t.Helper()
	size := func(low, high float64) units.Length { return units.Length(low*math.Pow(high/low, r.Float64())) * mm }
	l, w, h := size(0.5, 300), size(0.5, 100), size(0.1, 100)
	var former Former
	switch r.IntN(4) {
	case 0:
		former = Round{CoreDiameter: l, Height: h, FlangeDiameter: units.Length(r.IntN(2)) * (l + size(0.2, 60))}
	case 1:
		former = Racetrack{CoreLength: max(l, w), CoreWidth: min(l, w), Height: h}
	case 2:
		former = Rectangle{CoreLength: l, CoreWidth: w, CornerRadius: min(l, w) / 2 * units.Length(r.Float64()), Height: h}
	default:
		former = Convex{Corners: ring(3+r.IntN(60)*7%59, float64(l)/2, float64(w)/2), Height: h}
	}
	bare := size(0.02, 2)
	wires := []wire.Wire{gauge(t, float64(18+r.IntN(29))), must(wire.Measured(bare, bare*units.Length(1.02+0.3*r.Float64())))}
	style := Style{Lay: Lay(r.IntN(3)), Strands: r.IntN(3) * r.IntN(2)}
	c, err := Wind(former, wires[r.IntN(2)], 1+int(math.Pow(10, 5*r.Float64())), style)
	return c, err == nil
}

// numbers calls visit for every number within a value.
func numbers(v reflect.Value, name string, visit func(name string, x float64)) {
	switch v.Kind() {
	case reflect.Float64:
		visit(name, v.Float())
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				numbers(v.Field(i), name+"."+f.Name, visit)
			}
		}
	}
}

// arguments are what a method may be given, or none where this does not know.
func arguments(r *rand.Rand, m reflect.Type) (args []reflect.Value, ok bool) {
	for i := range m.NumIn() {
		var x any
		switch m.In(i) {
		case reflect.TypeFor[units.Frequency]():
			x = units.Frequency(math.Pow(10, 6*r.Float64()))
		case reflect.TypeFor[units.Temperature]():
			x = units.Temperature(273.15 + 80*r.Float64())
		case reflect.TypeFor[units.Length]():
			x = units.Length(0.3*r.Float64() + 0.01)
		case reflect.TypeFor[units.Current]():
			x = units.Current(0.01)
		case reflect.TypeFor[HumSource]():
			x = UniformField{FluxDensity: 1e-6}
		case reflect.TypeFor[Compound]():
			x = compounds[r.IntN(len(compounds))].Compound
		case reflect.TypeFor[int]():
			x = 1 + r.IntN(100)
		default:
			return nil, false
		}
		args = append(args, reflect.ValueOf(x))
	}
	return args, true
}

func TestExtremeWindings(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 42))
	for found := 0; found < 80; {
		if c, ok := extremeWinding(t, r); ok {
			found++
			everyNumber(t, r, c)
		}
	}
}

// everyNumber calls the methods of a winding and wants finite numbers or an error.
func everyNumber(t *testing.T, r *rand.Rand, c Winding) {
	t.Helper()
	v := reflect.ValueOf(c)
	for i := range v.NumMethod() {
		name := fmt.Sprintf("%v.%s", c, v.Type().Method(i).Name)
		args, ok := arguments(r, v.Method(i).Type())
		if !ok || v.Method(i).Type().IsVariadic() {
			continue
		}
		out := v.Method(i).Call(args)
		if last := out[len(out)-1]; last.Type() == reflect.TypeFor[error]() && !last.IsNil() {
			continue
		}
		numbers(out[0], name, func(name string, x float64) {
			if (math.IsNaN(x) || math.IsInf(x, 0)) && !strings.HasSuffix(name, ".Room") { // which is endless without flanges
				t.Errorf("%s is %g", name, x)
			}
		})
	}
}
