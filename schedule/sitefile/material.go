package sitefile

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
	"swardbook/schedule/word"
)

var materialKinds = []material.Kind{material.LimeMaterial, material.FertilizerMaterial, material.SulfurMaterial,
	material.GypsumMaterial, material.MagnesiumMaterial, material.IronMaterial, material.WoodAsh}

// onlyFor names the keys that mean something for one kind of material alone.
var onlyFor = []struct {
	key  string
	kind material.Kind
}{
	{"cce", material.LimeMaterial}, {"ecce", material.LimeMaterial}, {"fineness", material.LimeMaterial}, {"hydrated", material.LimeMaterial},
	{"analysis", material.FertilizerMaterial}, {"slow_share", material.FertilizerMaterial}, {"lasts", material.FertilizerMaterial},
}

func (r *reader) readMaterials(top table) {
	t := top.under("material")
	names := t.names()
	if len(names) > maxMaterials {
		t.wrong("", fmt.Sprintf("%d materials are more than the %d that are read", len(names), maxMaterials), "leave out what this site does not use")
		return
	}
	for _, id := range names {
		if _, ok := t.values[id].(map[string]any); !ok {
			continue // reported by check
		}
		message, hint := isID(id)
		if message == "" && strings.HasPrefix(id, "trade-") {
			message, hint = fmt.Sprintf("the id %q is kept for materials of the trade", id), "choose one that does not begin with trade-"
		}
		if message != "" {
			t.wrong(id, message, hint)
		}
		for _, other := range r.site.Materials {
			if strings.EqualFold(other.ID, id) {
				t.wrong(id, fmt.Sprintf("differs from %q only in capitals", other.ID), "choose an id that cannot be mistaken for it")
			}
		}
		m := t.under(id)
		r.site.Materials = append(r.site.Materials, r.readMaterial(m, id))
		if day := m.date("counted"); !day.IsZero() {
			if r.site.Counted == nil {
				r.site.Counted = map[string]schedule.Date{}
			}
			r.site.Counted[id] = day
		}
		if m.given("counted") && !m.given("on_hand") {
			m.wrong("counted", "is given, but not what was counted", "give on_hand, the packs there were on that day")
		}
	}
}

func (r *reader) readMaterial(t table, id string) material.Material {
	m := material.Material{
		ID: id, Name: t.text("name"),
		Kind:      choice(t, "kind", materialKinds...),
		Analysis:  quantity(t, "analysis", agronomy.ParseAnalysis),
		SlowShare: t.number("slow_share", 0, 1),
		Lasts:     quantity(t, "lasts", above(agronomy.ParseWeeks)),
		Liquid:    choice(t, "form", "granular", "liquid") == "liquid",
		Density:   quantity(t, "density", agronomy.ParseDensity),
		CCE:       agronomy.Percent(t.number("cce", 1, 180)), // [common] pure calcium oxide is 178
		ECCE:      agronomy.Percent(t.number("ecce", 1, 180)),
		Fineness:  readFineness(t),
		Hydrated:  t.flag("hydrated"),
		Magnesium: agronomy.Percent(t.number("magnesium", 0, 61)), // [atomic-weights] magnesium oxide
		Sulfur:    agronomy.Percent(t.number("sulfur", 0, 100)),
		Iron:      agronomy.Percent(t.number("iron", 0, 40)), // [common] dried iron sulfate is some 32
		Pesticide: t.flag("pesticide"),
		OnHand:    t.number("on_hand", 0, 10000),
		NoRebuy:   t.given("rebuy") && !t.flag("rebuy"),
		Price:     t.number("price", 0, 1e6),
	}
	if m.Kind == material.WoodAsh && !t.given("analysis") {
		m.Analysis = material.Ash
		r.assume("material %s: analysis not given, taken as 0-2-6, as a letter on wood ashes has it", id)
	}
	if m.Name == "" {
		m.Name = id
		if numbers := word.Analysis(m.Analysis); t.given("analysis") && !strings.Contains(id, numbers) {
			m.Name += " " + numbers
		}
	}
	if named, says := material.PesticideWord(m.Name + " " + id); says && !t.given("pesticide") {
		m.Pesticide = true
		r.assume("material %s: pesticide not given, taken as true, for its name says %q; if nothing of the kind is in it, set pesticide = false", id, named)
	}
	if !t.given("kind") {
		switch {
		case t.given("analysis"):
			m.Kind = material.FertilizerMaterial
		case t.given("cce"), t.given("ecce"):
			m.Kind = material.LimeMaterial
			r.assume("material %s: kind not given, taken as lime, for it has a calcium carbonate equivalent", id)
		default:
			t.wrong("kind", "is missing", "known: "+list(materialKinds)+"; a fertilizer is known by its analysis")
		}
	}
	if !t.given("on_hand") {
		r.assume("material %s: no packs on hand are noted, so what it is used for is to be bought", id)
	}
	checkKind(t, m)
	readPack(t, &m)
	return m
}

// checkKind compares the keys of a material with its kind.
func checkKind(t table, m material.Material) {
	if m.Kind == "" {
		return
	}
	for _, o := range onlyFor {
		if ash := m.Kind == material.WoodAsh && (o.key == "cce" || o.key == "analysis"); t.given(o.key) && m.Kind != o.kind && !ash {
			t.wrong(o.key, fmt.Sprintf("means nothing for a material of kind %s", m.Kind), fmt.Sprintf("it belongs to kind %s; change the kind, or remove the key", o.kind))
		}
	}
	switch m.Kind {
	case material.FertilizerMaterial:
		t.need("analysis", `the three numbers on the bag, like analysis = "18-24-12"`)
		a := m.Analysis
		if sum := a.N + a.P2O5 + a.K2O + m.Magnesium + m.Sulfur; sum > 100 {
			t.wrong("analysis", fmt.Sprintf("with magnesium and sulfur it adds up to %.4g %%, more than the bag holds", float64(sum)), "check each figure on the label")
		} else if s := t.text("analysis"); s != "" && sum == 0 && strings.Trim(s, "0-. ") == "" {
			t.doubt("analysis", "brings no nutrient at all", "check the label")
		}
		if m.SlowShare > 0 && a.N == 0 && t.text("analysis") != "" {
			t.wrong("slow_share", "is a share of the nitrogen, and the analysis has none", "remove it, or mend the analysis")
		}
		if m.SlowShare > 0 && m.SlowShare < 0.02 { // [common] no feed is sold as slow with so little
			t.doubt("slow_share", fmt.Sprintf("%.4g means %.4g %% of the nitrogen", m.SlowShare, 100*m.SlowShare), "it is a share from 0 to 1: 0.4 for 40 %; is it a percentage divided twice?")
		}
		if m.SlowShare > 0 && !t.given("lasts") {
			t.doubt("lasts", "is missing: how long the slow part feeds is not known", `the label says, like lasts = "8 weeks"`)
		}
		if t.given("lasts") && !t.given("slow_share") {
			t.doubt("slow_share", "is missing, so all the nitrogen counts as quick and lasts has no effect", "give the share of the nitrogen that is slow, 0 to 1")
		}
	case material.LimeMaterial:
		if !t.given("cce") && !t.given("ecce") {
			t.wrong("cce", "is missing", "the label gives the calcium carbonate equivalent (cce) or the effective one (ecce), in percent")
		}
		if m.CCE > 0 && m.ECCE > m.CCE {
			t.wrong("ecce", "the effective value is above the calcium carbonate equivalent", "have the two changed places?")
		}
		for _, v := range []struct {
			key   string
			value agronomy.Percent
		}{{"cce", m.CCE}, {"ecce", m.ECCE}} {
			if v.value > 0 && v.value < 40 { // [common] poor ground limestone is over 50
				t.doubt(v.key, fmt.Sprintf("%.4g %% is less than any limestone sold for lawns", float64(v.value)), "it is a percentage, like 90; is it the calcium that was noted?")
			}
		}
		if m.CCE > 110 && !m.Hydrated { // [common] hydrated lime is 120 to 136
			t.doubt("cce", fmt.Sprintf("%.4g %% is more than ground limestone has", float64(m.CCE)), "hydrated or burned lime? then set hydrated = true: it burns leaves and skin")
		}
	case material.SulfurMaterial:
		t.need("sulfur", "the percentage of sulfur on the label, like sulfur = 90")
	case material.IronMaterial:
		t.need("iron", "the percentage of iron on the label, like iron = 20")
	case material.MagnesiumMaterial:
		t.need("magnesium", "the percentage of magnesium on the label, like magnesium = 10")
	}
}

// readPack reads the size of a pack: a weight, or for a liquid a volume.
func readPack(t table, m *material.Material) {
	switch {
	case m.Liquid:
		t.need("density", `the label of a liquid gives it, like density = "9.6 lb/gal"; without it pounds cannot become gallons`)
	case t.given("density"):
		t.wrong("density", "means nothing for a granular material", `for a liquid add form = "liquid"`)
	}
	s := t.text("pack")
	if s == "" {
		if (m.OnHand > 0 || m.Price > 0) && !t.given("pack") {
			t.wrong("pack", "is missing", `packs on hand and their price need the size of a pack, like pack = "40 lb"`)
		} else if !t.given("pack") {
			t.assume("material %s: size of a pack not given, so amounts are not counted in packs", m.ID)
		}
		return
	}
	_, noWeight := agronomy.ParseWeight(s)
	if noWeight != nil { // no unit is both
		if _, err := agronomy.ParseVolume(s); err == nil {
			if !m.Liquid {
				t.wrong("pack", fmt.Sprintf("%q is a volume, and the material is granular", s), `give its weight, or add form = "liquid"`)
			}
			m.PackVolume = quantity(t, "pack", above(agronomy.ParseVolume))
			return
		}
	}
	m.Pack = quantity(t, "pack", above(agronomy.ParseWeight))
}

// readFineness reads the share of a lime that passes each sieve, from the
// coarsest to the finest.
func readFineness(t table) []material.Sieve {
	f := t.under("fineness")
	var sieves []material.Sieve
	for _, name := range f.names() {
		mesh, err := strconv.Atoi(name)
		if err != nil || mesh < 2 || mesh > 400 {
			f.wrong(name, fmt.Sprintf("%q is not the mesh of a sieve", name), "sieves have 2 to 400 meshes to the inch, like \"60\" = 75")
			continue
		}
		sieves = append(sieves, material.Sieve{Mesh: mesh, Passing: agronomy.Percent(f.number(name, 0, 100))})
	}
	slices.SortStableFunc(sieves, func(a, b material.Sieve) int { return cmp.Compare(a.Mesh, b.Mesh) })
	for i := 1; i < len(sieves); i++ {
		if sieves[i].Passing > sieves[i-1].Passing {
			f.wrong(strconv.Itoa(sieves[i].Mesh), fmt.Sprintf("more passes sieve %d than the coarser sieve %d", sieves[i].Mesh, sieves[i-1].Mesh), "the finer the sieve, the less passes")
		}
	}
	for _, s := range sieves {
		for _, least := range []material.Sieve{{Mesh: 8, Passing: 50}, {Mesh: 20, Passing: 30}, {Mesh: 60, Passing: 15}, {Mesh: 100, Passing: 10}} { // [common] the coarsest sold for lawns passes more
			if s.Mesh == least.Mesh && s.Passing > 0 && s.Passing < least.Passing {
				f.doubt(strconv.Itoa(s.Mesh), fmt.Sprintf("only %.4g %% passes %d mesh, less than of any lime sold for lawns", float64(s.Passing), s.Mesh), "is a digit missing, or is it the share held back?")
			}
		}
	}
	if t.given("fineness") && len(sieves) == 0 && f.values != nil && len(f.values) == 0 {
		t.wrong("fineness", "names no sieve", `like fineness = { "8" = 100, "60" = 75 }`)
	}
	return sieves
}
