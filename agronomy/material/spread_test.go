package material

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/climate"
)

func TestSpreadOver(t *testing.T) {
	s, err := SpreadOver(10, 2600, 4)
	if err != nil {
		t.Fatal(err)
	}
	if s.HalfRate != 5 || !matches(float64(s.HalfWeight), 13) || s.Walk != 650 || len(s.Steps()) != 4 {
		t.Errorf("%+v", s)
	}
	if !strings.Contains(s.Steps()[0].Text, "5 lb per 1000 sq ft (24.4 g/m2)") || !strings.Contains(s.Steps()[0].Text, "13 lb (5.9 kg) each time") {
		t.Error(s.Steps()[0].Text)
	}
	if s, err := SpreadOver(10, 2600, 0); err != nil || s.Walk != 0 || len(s.Steps()) != 3 {
		t.Errorf("without a width: %+v, %v", s, err)
	}
	for _, c := range [][3]float64{{0, 1, 1}, {1, 0, 1}, {1, 1, -1}, {math.NaN(), 1, 1}} {
		if _, err := SpreadOver(agronomy.PerThousand(c[0]), agronomy.SquareFeet(c[1]), climate.Feet(c[2])); err == nil {
			t.Errorf("%v spread", c)
		}
	}
}

func TestDropCalibration(t *testing.T) {
	if _, err := DropCalibration(-1, 50); err == nil {
		t.Error("less than nothing caught")
	}
}

func TestTankFills(t *testing.T) {
	for name, c := range map[string]struct {
		area, perGallon agronomy.SquareFeet
		tank            agronomy.Gallons
		fills           int
		last            agronomy.Gallons
	}{
		"part of one tank":  {3400, 1000, 4, 1, 3.4},
		"one tank exactly":  {4000, 1000, 4, 1, 4},
		"a little more":     {4001, 1000, 4, 2, 0.001},
		"two tanks exactly": {8000, 1000, 4, 2, 4},
	} {
		f, err := TankFills(c.area, c.tank, c.perGallon)
		if err != nil || f.Count != c.fills || !matches(float64(f.Last), float64(c.last)) {
			t.Errorf("%s: %+v, %v", name, f, err)
		}
	}
	for _, c := range [][3]float64{{0, 4, 1000}, {1000, 0, 1000}, {1000, 4, 0}, {math.NaN(), 4, 1000}, {1e9, 1, 1000}} {
		if f, err := TankFills(agronomy.SquareFeet(c[0]), agronomy.Gallons(c[1]), agronomy.SquareFeet(c[2])); err == nil {
			t.Errorf("%v gives %+v", c, f)
		}
	}
}

// 0.5 lb N from 21-0-0 of 10.2 lb per gal on 3400 sq ft, 1000 sq ft to a
// gallon of spray: one fill of 3.4 gal with 0.794 gal of product. [definitions]
func TestSpray(t *testing.T) {
	m := labelled("21-0-0")
	m.Liquid, m.Density = true, 10.2
	d, err := DoseFor(m, Wants{N: 0.5}, NoCaps())
	if err != nil {
		t.Fatal(err)
	}
	f, err := d.Spray(3400, 4, 1000)
	if err != nil || f.Count != 1 || math.Abs(float64(f.InLast)-0.794) > 0.001 || !matches(float64(f.Last), 3.4) {
		t.Errorf("%+v, %v", f, err)
	}
	big, err := d.Spray(10400, 4, 1000)
	if err != nil || big.Count != 3 {
		t.Fatalf("%+v, %v", big, err)
	}
	all := big.Product*2 + big.InLast
	if !matches(float64(all), float64(d.For(10400).Volume)) {
		t.Errorf("the fills hold %v gal of product, the dose is %v", all, d.For(10400).Volume)
	}
	if _, err := d.Spray(3400, 4, 5000); err == nil || !strings.Contains(err.Error(), "spray more gallons") {
		t.Errorf("more product than spray: %v", err)
	}
	if _, err := DoseOf(labelled("46-0-0"), 2).Spray(3400, 4, 1000); err == nil {
		t.Error("a granule sprayed")
	}
}

func TestWater(t *testing.T) {
	g, err := WaterVolume(25.4/agronomy.MillimetersPerInch, agronomy.SquareFeet(100*agronomy.SquareFeetPerMeter2))
	if err != nil || math.Abs(g.Liters()-2540) > 0.5 { // 25.4 mm on 100 m2
		t.Errorf("%v L, %v", g.Liters(), err)
	}
	rate, err := CatchRate(0.1)
	if err != nil || !matches(float64(rate), 0.4) {
		t.Errorf("caught: %v, %v", rate, err)
	}
	if rate, err := FlowRate(5, 1000); err != nil || math.Abs(float64(rate)-5*96.25/1000) > 1e-9 { // [definitions]
		t.Errorf("flow: %v, %v", rate, err)
	}
	minutes, _ := WaterMinutes(0.25, 0.4)
	depth := minutes / 60 * 0.4
	if !matches(depth, 0.25) {
		t.Errorf("%v min make %v in", minutes, depth)
	}
	for name, err := range map[string]error{
		"no rate":      second(WaterMinutes(0.25, 0)),
		"no number":    second(WaterVolume(agronomy.Inches(math.NaN()), 1000)),
		"nothing":      second(CatchRate(0)),
		"flow on none": second(FlowRate(5, 0)),
	} {
		if err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func second[T any](_ T, err error) error { return err }
