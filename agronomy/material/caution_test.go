package material

import (
	"slices"
	"strings"
	"testing"

	"swardbook/agronomy"
)

func TestCautions(t *testing.T) {
	starter := labelled("18-24-12")
	liquid := with(labelled("12-0-0"), func(m *Material) { m.Liquid = true })
	for name, c := range map[string]struct {
		m         Material
		use       Use
		says, not []string
	}{
		"limestone":         {Material{Kind: LimeMaterial}, ForLime, []string{"label", "dust", "children and pets"}, []string{"Caustic", "85 °F"}},
		"hydrated lime":     {Material{Kind: LimeMaterial, Hydrated: true}, ForLime, []string{"Caustic", "goggles"}, nil},
		"sulfur":            {Material{Kind: SulfurMaterial}, ForSulfur, []string{"75 °F", "at once", "catch fire"}, []string{"algae"}},
		"gypsum":            {Material{Kind: GypsumMaterial}, ForGypsum, []string{"40 lb", "drains"}, nil},
		"iron sulfate":      {Material{Kind: IronMaterial}, ForIron, []string{"rust-brown", "weed killer", "leaves are dry", "85 °F", "drains"}, []string{"watered in", "Sweep", "algae"}},
		"magnesium sulfate": {Material{Kind: MagnesiumMaterial}, ForMagnesium, []string{"2 lb", "gloves"}, nil},
		"starter":           {starter, ForStarter, []string{"algae", "1 lb K₂O", "seedbed", "paving", "Local codes", "85 °F", "beside water"}, []string{"corrodes"}},
		"urea":              {labelled("46-0-0"), ForNitrogen, []string{"dry leaves"}, []string{"algae", "K₂O", "seedbed"}},
		"ammonium nitrate":  {labelled("34-0-0"), ForNitrogen, []string{"feeds fire"}, nil},
		"liquid":            {liquid, ForNitrogen, []string{"drifts", "corrodes", "0.25 lb"}, []string{"dry leaves"}},
	} {
		got := Cautions(c.m, c.use)
		text := joined(got)
		for _, s := range c.says {
			if !strings.Contains(text, s) {
				t.Errorf("%s lacks %q:\n%s", name, s, text)
			}
		}
		for _, s := range c.not {
			if strings.Contains(text, s) {
				t.Errorf("%s should not say %q:\n%s", name, s, text)
			}
		}
		if !strings.Contains(got[0].Text, "label") {
			t.Errorf("%s does not begin with the label", name)
		}
		checkTexts(t, got)
	}
}

// Whatever goes down, the cautions say what to wear, keep children and pets off,
// and say something about paving, water and the label.
func TestCautionsCoverEveryJob(t *testing.T) {
	all := append(TradeMaterials(), Material{Kind: WoodAsh}, Material{Kind: LimeMaterial, Hydrated: true}, with(labelled("12-0-0"), func(m *Material) { m.Liquid = true }))
	for _, m := range all {
		for _, use := range []Use{ForStarter, ForLime, ForSulfur, ForPhosphorus, ForPotassium, ForMagnesium, ForNitrogen, ForLateNitrogen, ForGypsum, ForIron} {
			text := joined(Cautions(m, use))
			for _, topic := range []string{"label", "gloves|Wear", "hildren|everybody", "pets", "paving", "drain|water,"} {
				if !slices.ContainsFunc(strings.Split(topic, "|"), func(w string) bool { return strings.Contains(text, w) }) {
					t.Errorf("%s for %s: nothing on %s:\n%s", m.Title(), use, topic, text)
				}
			}
			if m.Sprayed() && !strings.Contains(text, "weed killer") {
				t.Errorf("%s is sprayed, and nothing keeps it from a weed killer", m.Title())
			}
			checkTexts(t, Cautions(m, use))
		}
	}
}

func TestWeatherCautions(t *testing.T) {
	for name, c := range map[string]struct {
		m         Material
		says, not []string
	}{
		"lime":    {Material{Kind: LimeMaterial}, []string{"frozen", "dust drifts"}, []string{"forecast"}},
		"granule": {labelled("46-0-0"), []string{"frozen", "1 in (25 mm)", "dormant"}, []string{"wind"}},
		"liquid":  {with(labelled("46-0-0"), func(m *Material) { m.Kind, m.Liquid = FertilizerMaterial, true }), []string{"spray drifts", "forecast"}, []string{"dust"}},
	} {
		got := WeatherCautions(c.m)
		text := joined(got)
		for _, s := range c.says {
			if !strings.Contains(text, s) {
				t.Errorf("%s lacks %q:\n%s", name, s, text)
			}
		}
		for _, s := range c.not {
			if strings.Contains(text, s) {
				t.Errorf("%s should not say %q", name, s)
			}
		}
		checkTexts(t, got)
	}
	checkTexts(t, StorageRules())
}

// checkTexts holds what every list of texts for a reader must: a source each,
// none twice, no angle brackets, whole sentences.
func checkTexts(t *testing.T, rs []agronomy.Reason) {
	t.Helper()
	known := agronomy.Sources()
	for i, r := range rs {
		for key := range strings.SplitSeq(r.Source, ", ") {
			if _, ok := known[key]; !ok {
				t.Errorf("unknown source %q of %q", key, r.Text)
			}
		}
		if strings.ContainsAny(r.Text, "<>") || !strings.HasSuffix(r.Text, ".") {
			t.Errorf("not a sentence for a reader: %q", r.Text)
		}
		if slices.ContainsFunc(rs[:i], func(o agronomy.Reason) bool { return o.Text == r.Text }) {
			t.Errorf("said twice: %q", r.Text)
		}
	}
}

func joined(rs []agronomy.Reason) string {
	var b strings.Builder
	for _, r := range rs {
		b.WriteString(r.Text + "\n")
	}
	return b.String()
}
