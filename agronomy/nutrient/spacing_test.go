package nutrient

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
)

func TestSpacing(t *testing.T) {
	for _, c := range []struct {
		first, then Things
		days        int
	}{
		{LimeDown, AmmoniumDown, 14}, {HydratedLimeDown, AmmoniumDown, 28}, {AmmoniumDown, LimeDown, 7},
		{LimeDown, PhosphorusDown, 14}, {LimeDown, LimeDown, 90}, {SulfurDown, SulfurDown, 60},
		{SulfurDown, LimeDown, 180}, {SolubleNDown, SlowNDown, 28}, {SlowNDown, SolubleNDown, 42},
		{PotassiumDown, PotassiumDown, 28}, {SeedUp, SolubleNDown, 28}, {SeedUp, FirstMow, 14},
		{PotassiumDown, SampleTaken, 42}, {LimeDown, SampleTaken, 180},
	} {
		if r, ok := Spacing(c.first, c.then); !ok || r.Days != c.days || r.Why.Source == "" || r.Why.Text == "" {
			t.Errorf("%s then %s: %+v, want %d days", c.first, c.then, r, c.days)
		}
	}
	if r, ok := Spacing(PotassiumDown, LimeDown); ok {
		t.Errorf("potassium then lime: %+v", r)
	}
	seen := map[[2]Things]bool{}
	for _, r := range spacingRules {
		if seen[[2]Things{r.First, r.Then}] || r.Days <= 0 || r.Aim != 0 && r.Aim <= r.Days {
			t.Errorf("%+v is doubled or empty", r)
		}
		seen[[2]Things{r.First, r.Then}] = true
	}
}

func TestBetween(t *testing.T) {
	lime, hydrated := material.Material{Kind: material.LimeMaterial}, material.Material{Kind: material.LimeMaterial, Hydrated: true}
	starter, urea := labelled("18-24-12"), labelled("46-0-0")
	nitrate := labelled("15.5-0-0")
	slow := with(urea, func(m *material.Material) { m.SlowShare = 0.5 })
	for name, c := range map[string]struct {
		first, then material.Material
		tilled      bool
		days        int
	}{
		"lime then urea":             {lime, urea, false, 14},
		"hydrated lime then urea":    {hydrated, urea, false, 28},
		"hydrated lime, tilled":      {hydrated, urea, true, 28},
		"lime then a nitrate":        {lime, nitrate, false, 0},
		"lime then starter, tilled":  {lime, starter, true, 0},
		"lime then starter":          {lime, starter, false, 14},
		"quick then slow":            {urea, slow, false, 28},
		"slow then quick":            {slow, urea, false, 42},
		"starter then potash":        {starter, labelled("0-0-50"), false, 28},
		"urea then potash":           {urea, labelled("0-0-50"), false, 0},
		"sulfur then lime":           {material.Material{Kind: material.SulfurMaterial}, lime, false, 180},
		"gypsum then anything":       {material.Material{Kind: material.GypsumMaterial}, urea, false, 0},
		"phosphate alone, then urea": {labelled("0-46-0"), urea, false, 0},
	} {
		r, ok := Between(ThingsOf(c.first), ThingsOf(c.then), c.tilled)
		if r.Days != c.days || ok != (c.days > 0) {
			t.Errorf("%s: %+v, %v; want %d days", name, r, ok, c.days)
		}
	}
}

func TestAmmonium(t *testing.T) {
	for analysis, want := range map[string]bool{
		"46-0-0": true, "21-0-0": true, "18-46-0": true, "11-52-0": true, "24-0-11": true,
		"15.5-0-0": false, "16-0-0": false, "13-0-46": false, "0-0-50": false,
	} {
		if got, why := labelled(analysis).Ammonium(); got != want || why.Text == "" {
			t.Errorf("%s: %v (%s), want %v", analysis, got, why.Text, want)
		}
	}
	if _, why := labelled("24-0-11").Ammonium(); !strings.Contains(why.Text, "not given") {
		t.Errorf("an assumed form does not say so: %s", why.Text)
	}
}

func TestLastUsefuls(t *testing.T) {
	kinds := []LastKind{LastLime, LastSolubleN, LastSlowN, LastPhosphorus, LastPotassium, LastMagnesium, LastSulfur, LastSeed, LastSample}
	for _, s := range []agronomy.Season{agronomy.Cool, agronomy.Warm} {
		if n := len(LastUsefuls(s)); n != len(kinds) {
			t.Errorf("%v: %d rules, want %d", s, n, len(kinds))
		}
		for _, k := range kinds {
			r, ok := LastUsefulFor(k, s)
			if !ok || r.Season != s || r.Why.Text == "" || r.Why.Source == "" {
				t.Errorf("%v %s: %+v, %v", s, k, r, ok)
			}
			r.Kind, r.Season, r.Why = "", 0, agronomy.Reason{}
			if r == (LastUseful{}) != (k == LastSample) {
				t.Errorf("%v %s has no limit", s, k)
			}
		}
	}
	if _, ok := LastUsefulFor("paint", agronomy.Cool); ok {
		t.Error("a rule for an unknown kind")
	}
	// The last quick nitrogen on cool-season grass: growth a fifth, or three
	// weeks before an early freeze. [soldat-fall], [common]
	if r, _ := LastUsefulFor(LastSolubleN, agronomy.Cool); r.Growth != 0.2 || r.BeforeEarlyFreeze != 21 {
		t.Errorf("%+v", r)
	}
	if r, _ := LastUsefulFor(LastSolubleN, agronomy.Warm); r.BeforeFirstFrost != 42 {
		t.Errorf("%+v", r)
	}
}

func TestWaterIn(t *testing.T) {
	liquid := with(labelled("12-0-0"), func(m *material.Material) { m.Liquid, m.Density = true, 9.6 })
	for name, c := range map[string]struct {
		m    material.Material
		rate agronomy.PerThousand
		use  material.Use
		want material.WaterKind
	}{
		"lime":                   {material.Material{Kind: material.LimeMaterial}, 40, material.ForLime, material.WaterLime},
		"sulfur":                 {material.Material{Kind: material.SulfurMaterial}, 5, material.ForSulfur, material.WaterSulfur},
		"gypsum":                 {material.Material{Kind: material.GypsumMaterial}, 40, material.ForGypsum, material.WaterGypsum},
		"starter":                {labelled("18-24-12"), 4, material.ForStarter, material.WaterStarter},
		"quick":                  {labelled("46-0-0"), 1, material.ForNitrogen, material.WaterSoluble},
		"late":                   {labelled("46-0-0"), 1, material.ForLateNitrogen, material.WaterLateNitrogen},
		"slow":                   {with(labelled("40-0-0"), func(m *material.Material) { m.SlowShare = 0.5 }), 1, material.ForNitrogen, material.WaterSlow},
		"potash":                 {labelled("0-0-50"), 1, material.ForPotassium, material.WaterPotassium},
		"phosphate":              {labelled("0-46-0"), 1, material.ForPhosphorus, material.WaterSoluble},
		"light liquid":           {liquid, 2, material.ForNitrogen, material.WaterFoliar},
		"liquid too strong":      {liquid, 2.2, material.ForNitrogen, material.WaterSoluble},
		"magnesium sulfate":      {material.Material{Kind: material.MagnesiumMaterial, Magnesium: 10}, 2, material.ForMagnesium, material.WaterSoluble},
		"compound with nitrogen": {labelled("20-5-10"), 4, material.ForPotassium, material.WaterSoluble},
	} {
		w := material.DoseOf(c.m, c.rate).WaterIn(c.use)
		if w.Kind != c.want || w.Why.Source == "" {
			t.Errorf("%s: %+v, want %s", name, w, c.want)
		}
	}
	if _, ok := material.WaterInFor("paint"); ok {
		t.Error("water for an unknown kind")
	}
}

func TestHeatAndSalt(t *testing.T) {
	for name, c := range map[string]struct {
		m    material.Material
		heat float64
	}{
		"sulfur": {material.Material{Kind: material.SulfurMaterial}, 75}, "urea": {labelled("46-0-0"), 85}, "potash": {labelled("0-0-50"), 0},
		"lime": {material.Material{Kind: material.LimeMaterial}, 0}, "all slow": {with(labelled("40-0-0"), func(m *material.Material) { m.SlowShare = 1 }), 0},
		"liquid": {with(labelled("0-0-25"), func(m *material.Material) { m.Liquid = true }), 85},
	} {
		if h, _, ok := c.m.HeatLimit(); !matches(float64(h), c.heat) || ok != (c.heat > 0) {
			t.Errorf("%s: %v, %v", name, h, ok)
		}
	}
	urea, _, ok := labelled("46-0-0").SaltIndex()
	sulfate, _, ok2 := labelled("21-0-0").SaltIndex()
	if !ok || !ok2 || urea != 75 || sulfate != 69 {
		t.Errorf("urea %v, ammonium sulfate %v", urea, sulfate)
	}
	if s, _, ok := labelled("18-24-12").SaltIndex(); ok || !matches(s, 0) || math.IsNaN(s) {
		t.Errorf("a blend has the salt index %v", s)
	}
}

// labelled makes a material of an analysis, such as "18-24-12".
func labelled(analysis string) material.Material {
	var a agronomy.Analysis
	if _, err := fmt.Sscanf(analysis, "%g-%g-%g", &a.N, &a.P2O5, &a.K2O); err != nil {
		panic(err)
	}
	return material.Material{ID: analysis, Name: analysis, Kind: material.FertilizerMaterial, Analysis: a}
}

func with(m material.Material, change func(*material.Material)) material.Material {
	change(&m)
	return m
}
