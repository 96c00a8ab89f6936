package sitefile

import (
	"math"
	"strings"
	"testing"

	"swardbook/agronomy"
	"swardbook/agronomy/material"
	"swardbook/schedule"
)

// How much went down, in every form in which people write it.
func TestAmounts(t *testing.T) {
	const line = "2026-10-10,west,nitrogen,MATERIAL,\"AMOUNT\",,\n"
	s, ps := load(t, string(mustRead(t, "testdata/full.toml"))+"[material.loose]\nanalysis = \"10-10-10\"\n")
	if s == nil {
		t.Fatal(ps)
	}
	for _, c := range []struct {
		material, amount string
		want             schedule.Done // only its amount is compared
		says             string
	}{
		{"starter", "", schedule.Done{Share: 1, AsPlanned: true}, ""},
		{"starter", "All", schedule.Done{Share: 1, AsPlanned: true}, ""},
		{"starter", "as planned", schedule.Done{Share: 1, AsPlanned: true}, ""},
		{"starter", "half", schedule.Done{Share: 0.5}, ""},
		{"starter", "a third", schedule.Done{Share: 1.0 / 3}, ""},
		{"starter", "two thirds", schedule.Done{Share: 2.0 / 3}, ""},
		{"starter", "quarter", schedule.Done{Share: 0.25}, ""},
		{"starter", "A Quarter", schedule.Done{Share: 0.25}, ""},
		{"starter", "three quarters", schedule.Done{Share: 0.75}, ""},
		{"starter", "missed", schedule.Done{Missed: true}, ""},
		{"starter", "1 %", schedule.Done{Share: 0.01}, ""},
		{"starter", "100%", schedule.Done{Share: 1}, ""},
		{"starter", "0 %", schedule.Done{}, "nothing went down"},
		{"starter", "101 %", schedule.Done{}, "is not a part of the plan"},
		{"starter", "1.5 packs", schedule.Done{Packs: 1.5}, ""},
		{"starter", "1 pack", schedule.Done{Packs: 1}, ""},
		{"starter", "2 bags", schedule.Done{Packs: 2}, ""},
		{"starter", "1 bag", schedule.Done{Packs: 1}, ""},
		{"starter", "10000 packs", schedule.Done{Packs: 10000}, ""},
		{"starter", "10001 packs", schedule.Done{}, "is not a number of packs"},
		{"starter", "0 packs", schedule.Done{}, "is not a number of packs"},
		{"starter", "two packs", schedule.Done{}, "is not a number of packs"},
		{"liquid", "2 packs", schedule.Done{Packs: 2}, ""},
		{"loose", "2 packs", schedule.Done{}, "the pack of loose has no size"}, {"loose", "2 lb", schedule.Done{Weight: 2}, ""},
		{"", "2 packs", schedule.Done{Packs: 2}, ""}, // of the planned material
		{"liquid", "2.5 gal", schedule.Done{Volume: 2.5}, ""},
		{"", "2.5 gal", schedule.Done{Volume: 2.5}, ""},
		{"starter", "2.5 gal", schedule.Done{}, "is a volume, and starter is granular"},
		{"liquid", "0 gal", schedule.Done{}, "nothing went down"},
		{"starter", "96 lb", schedule.Done{Weight: 96}, ""},
		{"starter", "8 oz", schedule.Done{Weight: 0.5}, ""},
		{"starter", "1,200 lb", schedule.Done{Weight: 1200}, ""},
		{"starter", "12,5 lb", schedule.Done{}, "has a comma that does not set off thousands"},
		{"starter", "0 lb", schedule.Done{}, "nothing went down"},
		{"starter", "much", schedule.Done{}, "is not an amount"},
	} {
		got, ps := LoadRecord("r.csv", []byte(ShortHeader+strings.NewReplacer("MATERIAL", c.material, "AMOUNT", c.amount).Replace(line)), s)
		said, fatal := at(ps, "amount")
		if c.says != "" {
			if len(got) != 0 || !fatal || !strings.Contains(said, c.says) {
				t.Errorf("%s of %q: %+v, %v; want %s", c.amount, c.material, got, ps, c.says)
			}
			continue
		}
		if len(ps) > 0 || len(got) != 1 {
			t.Errorf("%s of %q: %v", c.amount, c.material, ps)
			continue
		}
		c.want.Line, c.want.Date, c.want.Area, c.want.Job, c.want.Material = 2, day(2026, 10, 10), "west", "nitrogen", c.material
		if got[0] != c.want {
			t.Errorf("%s of %q: %+v, want %+v", c.amount, c.material, got[0], c.want)
		}
	}
}

// A line that stands by itself says what the bag held, whatever the bag of that name in the
// site file holds now; only the bag's name and pack come from the site file.
func TestWholeLines(t *testing.T) {
	limits := func(lb agronomy.Pounds) schedule.Done { return schedule.Done{Weight: lb} }
	for _, c := range []struct {
		cells string // kind, season, n, material, analysis, slow, lime_value, amount, of, by, note
		want  schedule.Done
		bag   material.Material
	}{
		{"nitrogen,2026,1,starter,20-5-10,0.25,,10 lb,,,", limits(10), material.Material{ID: "starter", Name: "starter 18-24-12", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20, P2O5: 5, K2O: 10}, SlowShare: 0.25, Lasts: 8, Pack: 24.9122356}},
		{"nitrogen,2026,1,liquid,12-0-0,1,,10 lb,,,", limits(10), material.Material{ID: "liquid", Name: "liquid 12-0-0", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 12}, SlowShare: 1, Liquid: true, Density: 9.6, PackVolume: 2.5}},
		{"potassium,2026,1,gone,0-0-22 11Mg 22S,,,10 lb,,,", limits(10), material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{K2O: 22}, Magnesium: 11, Sulfur: 22}},
		{"nitrogen,2026,1,gone,12-0-0 6Fe,0,,10 lb,,,", limits(10), material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 12}, Iron: 6}},
		{"lime,2026,1,limestone,0-0-0,,80,96 lb,,,", limits(96), material.Material{ID: "limestone", Name: "pelletized limestone", Kind: material.LimeMaterial, ECCE: 80, Pack: 40}},
		{"lime,2026,1,gone,,,200,96 lb,,,", limits(96), material.Material{ID: "gone", Kind: material.LimeMaterial, ECCE: 200}},
		{"lime,2026,1,ash,0-2-6,,45,20 lb,,,", limits(20), material.Material{ID: "ash", Kind: material.WoodAsh, ECCE: 45, Analysis: agronomy.Analysis{P2O5: 2, K2O: 6}}},
		{"gypsum,2026,1,gone,0-0-0 18S,,,40 lb,,,", limits(40), material.Material{ID: "gone", Kind: material.GypsumMaterial, Sulfur: 18}},
		{"iron,2026,1,gone,0-0-0 20Fe,,,1 lb,,,", limits(1), material.Material{ID: "gone", Kind: material.IronMaterial, Iron: 20}},
		{"iron,2026,1,gone,6-0-0 6Fe,,,1 lb,,,", limits(1), material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 6}, Iron: 6}},
		{"sulfur,2026,1,gone,0-0-0 50S,,,5 lb,,,", limits(5), material.Material{ID: "gone", Kind: material.SulfurMaterial, Sulfur: 50}},
		{"magnesium,2026,1,gone,0-0-0 10Mg 49S,,,5 lb,,,", limits(5), material.Material{ID: "gone", Kind: material.MagnesiumMaterial, Magnesium: 10, Sulfur: 49}},
		{"nitrogen,2026,1,gone,21-0-0 100S,,,5 lb,,,", limits(5), material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 21}, Sulfur: 100}},
		// An amount within 6 % of the dose first planned counts as planned: scales differ.
		{"nitrogen,2026,1,gone,20-0-0,,,10.5 lb,10 lb,,", schedule.Done{Weight: 10.5, Of: 10, AsPlanned: true}, material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}}},
		{"nitrogen,2026,1,gone,20-0-0,,,9.5 lb,10 lb,,", schedule.Done{Weight: 9.5, Of: 10, AsPlanned: true}, material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}}},
		{"nitrogen,2026,1,gone,20-0-0,,,10.7 lb,10 lb,,", schedule.Done{Weight: 10.7, Of: 10}, material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}}},
		{"nitrogen,2026,1,gone,20-0-0,,,9.3 lb,10 lb,,", schedule.Done{Weight: 9.3, Of: 10}, material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}}},
		{"nitrogen,2026,1,gone,20-0-0,,,10 lb,,mara,taken", schedule.Done{Weight: 10, Taken: true, By: "mara", Note: "taken"}, material.Material{ID: "gone", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 20}}},
	} {
		got, ps := LoadRecord("r.csv", []byte(Header+"2026-10-10,west,"+c.cells+"\n"), fullSite(t))
		if len(ps) > 0 || len(got) != 1 || got[0].Content == nil {
			t.Errorf("%s: %v, %v", c.cells, got, ps)
			continue
		}
		bag := *got[0].Content
		if math.Abs(float64(bag.Pack-c.bag.Pack)) < 1e-6 {
			bag.Pack = c.bag.Pack
		}
		if !sameBag(bag, c.bag) {
			t.Errorf("%s:\n%+v, want\n%+v", c.cells, bag, c.bag)
		}
		parts := strings.Split(c.cells, ",")
		c.want.Line, c.want.Date, c.want.Area, c.want.Job, c.want.Material, c.want.Content = 2, day(2026, 10, 10), "west", "west/"+parts[0]+"/2026-1", parts[3], got[0].Content
		if got[0] != c.want {
			t.Errorf("%s:\n%+v, want\n%+v", c.cells, got[0], c.want)
		}
	}
	// In a book without a kind column "taken" is a note like any other.
	if got, ps := LoadRecord("r.csv", []byte(ShortHeader+"2026-10-10,west,nitrogen,starter,10 lb,,taken\n"), fullSite(t)); len(ps) > 0 || got[0].Taken || got[0].Content != nil {
		t.Errorf("%+v, %v", got, ps)
	}
	// A job that spreads nothing has no bag contents, whatever the cells say.
	if got, ps := LoadRecord("r.csv", []byte(Header+"2026-10-10,west,soil-test,2026,1,,20-0-0,,,,,,\n"), fullSite(t)); len(ps) > 0 || len(got) != 1 || got[0].Content != nil {
		t.Errorf("%+v, %v", got, ps)
	}
}

func sameBag(a, b material.Material) bool {
	return a.ID == b.ID && a.Name == b.Name && a.Kind == b.Kind && a.Analysis == b.Analysis && a.SlowShare == b.SlowShare && a.Lasts == b.Lasts && a.Liquid == b.Liquid && a.Density == b.Density &&
		a.CCE == b.CCE && a.ECCE == b.ECCE && a.Magnesium == b.Magnesium && a.Sulfur == b.Sulfur && a.Iron == b.Iron && a.Pack == b.Pack && a.PackVolume == b.PackVolume && len(a.Fineness) == len(b.Fineness)
}

func TestWholeLinesThatAreWrong(t *testing.T) {
	for _, c := range []struct{ cells, column, says string }{
		{"nitrogen,2026,1,gone,20-0,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,20-0-0 x,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,5S 20-0-0,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,20-0-0 101S,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,20-0-0 -1S,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,20-0-0 xMg,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,60-30-30,,,10 lb,,,", "analysis", "is not an analysis"},
		{"nitrogen,2026,1,gone,20-0-0,1.1,,10 lb,,,", "slow", "is not a share"},
		{"nitrogen,2026,1,gone,20-0-0,-0.1,,10 lb,,,", "slow", "is not a share"},
		{"nitrogen,2026,1,gone,20-0-0,x,,10 lb,,,", "slow", "is not a share"},
		{"lime,2026,1,gone,0-0-0,,0,10 lb,,,", "lime_value", "is not a lime value"},
		{"lime,2026,1,gone,0-0-0,,200.1,10 lb,,,", "lime_value", "is not a lime value"},
		{"lime,2026,1,gone,0-0-0,,x,10 lb,,,", "lime_value", "is not a lime value"},
		{"lime,2026,1,gone,0-0-0,,80,10 lb,much,,", "of", "is not a weight"},
		{"lime,2026,,gone,0-0-0,,80,10 lb,,,", "season", "name no job"},
		{"lime,,1,gone,0-0-0,,80,10 lb,,,", "season", "name no job"},
		{"lime,2026,366,gone,0-0-0,,80,10 lb,,,", "", ""},
		{"lime,2026,367,gone,0-0-0,,80,10 lb,,,", "job", "a season has no more than 366 days"},
		{"lime,2026,1,gone,,,,10 lb,,,", "material", `unknown material "gone"`},
		{"liem,2026,1,gone,0-0-0,,80,10 lb,,,", "season", "name no job"},
		{"sow,2026,1,,,,,1 pack,,,", "amount", "seed is recorded by its weight"},
		{"overseed,2026,1,,,,,1 gal,,,", "amount", "seed is recorded by its weight"},
		{"sow,2026,1,,,,,6 lb,,,", "", ""},
	} {
		got, ps := LoadRecord("r.csv", []byte(Header+"2026-10-10,west,"+c.cells+"\n"), fullSite(t))
		said, fatal := at(ps, c.column)
		if c.says == "" && (len(got) != 1 || len(ps) > 0) || c.says != "" && (len(got) != 0 || !fatal || !strings.Contains(said, c.says)) {
			t.Errorf("%s: %v, %v; want %s: %s", c.cells, got, ps, c.column, c.says)
		}
	}
}

// What is written about a job done is read back as it was, each figure in its column: the
// analysis with what else is in the bag, the slow share, the value of a lime, the weight to
// three figures, the dose first planned.
func TestWholeLineIsRead(t *testing.T) {
	s := fullSite(t)
	s.Metric = false
	a := &s.Areas[0] // 2,600 sq ft
	down := func(k schedule.Kind, m material.Material, rate agronomy.PerThousand) schedule.Down {
		return schedule.Down{Done: schedule.Done{Date: day(2026, 10, 10), By: "mara", Note: "dry,\tcold"}, AreaID: "east", Kind: k, Season: 2026, N: 2, Dose: material.DoseOf(m, rate)}
	}
	feed := material.Material{ID: "feed", Kind: material.FertilizerMaterial, Analysis: agronomy.Analysis{N: 24, P2O5: 0, K2O: 11}, SlowShare: 0.4, Magnesium: 1.5, Sulfur: 3, Iron: 2}
	stone := material.Material{ID: "stone", Kind: material.LimeMaterial, ECCE: 85}
	ash := material.Material{ID: "ash", Kind: material.WoodAsh, CCE: 45, Analysis: agronomy.Analysis{P2O5: 2, K2O: 6}}
	missed, taken, of, test := down(schedule.Nitrogen, feed, 4), down(schedule.Nitrogen, feed, 4), down(schedule.Nitrogen, feed, 4), down(schedule.SoilTest, material.Material{}, 0)
	bare := *a
	bare.Stand = nil // whose rate is not known: the line says itself of how much
	a = &bare
	seed := func(w, of agronomy.Pounds, part float64) schedule.Down {
		d := down(schedule.Sow, material.Material{}, 0)
		d.Weight, d.Of, d.Part = w, of, part
		return d
	}
	missed.Missed, taken.Taken, of.Of = true, true, 20.8
	for _, c := range []struct {
		d    schedule.Down
		want string
	}{
		{down(schedule.Nitrogen, feed, 4), `2026-10-10,east,nitrogen,2026,2,feed,24-0-11 1.5Mg 3S 2Fe,0.4,,10.4 lb,,mara,"dry, cold"`},
		{down(schedule.Lime, stone, 500), `2026-10-10,east,lime,2026,2,stone,0-0-0,,85,1300 lb,,mara,"dry, cold"`},
		{down(schedule.Lime, ash, 10), `2026-10-10,east,lime,2026,2,ash,0-2-6,,45,26 lb,,mara,"dry, cold"`},
		{of, `2026-10-10,east,nitrogen,2026,2,feed,24-0-11 1.5Mg 3S 2Fe,0.4,,10.4 lb,20.8 lb,mara,"dry, cold"`},
		{missed, `2026-10-10,east,nitrogen,2026,2,,,,,missed,,mara,"dry, cold"`},
		{taken, `2026-10-10,east,nitrogen,2026,2,feed,24-0-11 1.5Mg 3S 2Fe,0.4,,10.4 lb,,mara,taken`},
		{seed(0, 0, 1), `2026-10-10,east,sow,2026,2,,,,,,,mara,"dry, cold"`},
		{seed(0, 0, 0.95), `2026-10-10,east,sow,2026,2,,,,,95 %,,mara,"dry, cold"`},
		{seed(9.5, 10, 0.95), `2026-10-10,east,sow,2026,2,,,,,9.5 lb,10 lb,mara,"dry, cold"`},
		{seed(12, 10, 1), `2026-10-10,east,sow,2026,2,,,,,12 lb,10 lb,mara,"dry, cold"`},
		{test, `2026-10-10,east,soil-test,2026,2,,,,,,,mara,"dry, cold"`},
	} {
		line := WholeLine(c.d, s, a)
		if line != c.want+"\n" {
			t.Errorf("%s, want\n%s", line, c.want)
		}
		got, ps := LoadRecord("r.csv", []byte(Header+line), s)
		if len(ps) > 0 || len(got) != 1 || got[0].Missed != c.d.Missed || got[0].Taken != c.d.Taken || got[0].Of != c.d.Of {
			t.Errorf("%s: read as %+v, %v", line, got, ps)
		}
	}
	s.Metric = true
	if line := WholeLine(down(schedule.Nitrogen, feed, 4), s, a); !strings.Contains(line, ",4.72 kg,") { // 10.4 lb
		t.Errorf("in metric: %s", line)
	}
}

// Which form a book is of, and which of its lines do not stand by themselves.
func TestForms(t *testing.T) {
	for book, whole := range map[string]bool{
		"": true, "\n\n": true, "# mine\n": true, Header: true, "# mine\n\n" + strings.ToUpper(Header): true, "\"date\", kind\n": true, ShortHeader: false, "2026-10-10,east,lime,,,,\n": false, ShortHeader + "2026-10-10,east,lime,,,,\n" + Header: true,
		Header + "2026-10-10,east,lime,2026,1,,,,,missed,,,\n": true, Header + ShortHeader: false, Header + ",,,\n": true,
	} {
		if IsWhole([]byte(book)) != whole {
			t.Errorf("%q: whole is %t", book, !whole)
		}
	}
	bag := &material.Material{}
	for _, c := range []struct {
		d     schedule.Done
		short bool
	}{
		{schedule.Done{Job: "lime"}, true}, {schedule.Done{Job: "east/lime/1"}, true}, {schedule.Done{Job: "east/lime/2026-1"}, true}, {schedule.Done{Job: "east/lime/2026-1", Content: bag}, false},
		{schedule.Done{Job: "east/lime/2026-1", Missed: true}, false}, {schedule.Done{Job: "lime", Missed: true}, true}, {schedule.Done{Job: "east/soil-test/2026-1"}, false}, {schedule.Done{Job: "soil-test"}, true}, {schedule.Done{Job: "nonsense"}, false},
	} {
		c.d.Line = 7
		ps := Short("r.csv", []schedule.Done{c.d})
		if len(ps) > 0 != c.short || c.short && (ps[0].Line != 7 || ps[0].File != "r.csv" || !ps[0].Warning || ps[0].Key != "job") {
			t.Errorf("%+v: %v", c.d, ps)
		}
	}
}

// For a date as spreadsheets write it, the hint gives the day in the form that is wanted.
func TestDaysOfSpreadsheets(t *testing.T) {
	for cell, want := range map[string]string{
		"9/19/2026": "did you mean 2026-09-19? ", "19.9.2026": "did you mean 2026-09-19? ", "4/5/2026": "did you mean 2026-04-05 or 2026-05-04? ", "5-5-2026": "did you mean 2026-05-05? ", "12/12/2026": "did you mean 2026-12-12? ", "12/11/2026": "did you mean 2026-12-11 or 2026-11-12? ",
		"1/31/2026": "did you mean 2026-01-31? ", "31/1/2026": "did you mean 2026-01-31? ", "12/13/2026": "did you mean 2026-12-13? ", "13/12/2026": "did you mean 2026-12-13? ", "13/13/2026": "", "0/5/2026": "", "5/0/2026": "", "32/1/2026": "", "1/32/2026": "", "9/19/26": "", "x/1/2026": "", "1/x/2026": "", "1/2/3/2026": "",
	} {
		_, ps := LoadRecord("r.csv", []byte(ShortHeader+cell+",east,lime,,half,,\n"), fullSite(t))
		if len(ps) != 1 || ps[0].Hint != want+"write it as 2026-09-19; in a spreadsheet, format the column as text" {
			t.Errorf("%s: %v (%s)", cell, ps, ps[0].Hint)
		}
	}
	for cell, ok := range map[string]bool{"1990-01-01": true, "1989-12-31": false, "2100-12-31": true, "2101-01-01": false} {
		_, ps := LoadRecord("r.csv", []byte(ShortHeader+cell+",east,lime,,half,,\n"), nil)
		if (len(ps) == 0) != ok || !ok && !strings.Contains(ps[0].Hint, "from 1990 to 2100") {
			t.Errorf("%s: %v", cell, ps)
		}
	}
}

// Lines that make sense one by one and not with the site.
func TestPlausibleLines(t *testing.T) {
	s := fullSite(t) // 2026-09-12 to 2027-09-11
	for _, c := range []struct{ line, column, says string }{
		{"2026-09-11,east,nitrogen,starter,,,", "material", "before the program starts nothing is planned"},
		{"2026-09-11,east,nitrogen,,10 lb,,", "material", "before the program starts nothing is planned"},
		{"2026-09-11,east,nitrogen,starter,10 lb,,", "", ""}, {"2026-09-11,east,nitrogen,starter,half,,", "", ""}, {"2026-09-11,east,nitrogen/1,,,,", "", ""}, {"2026-09-11,east,soil-test,,,,", "", ""}, {"2026-09-11,east,nitrogen,,missed,,", "", ""},
		{"2026-09-12,east,nitrogen,starter,,,", "", ""}, {"2027-09-11,east,nitrogen,starter,,,", "", ""}, {"2027-09-12,east,nitrogen,starter,,,", "date", "~is after the program ends, 2027-09-11"},
		{"2026-10-01,east,nitrogen,starter,5 lb,,\n2026-10-01,east,nitrogen,starter,5 lb,mara,again", "job", "~the same as line 2"},
		{"2026-10-01,east,nitrogen,starter,5 lb,,\n2026-10-01,east,nitrogen,starter,6 lb,,", "", ""}, {"2026-10-01,east,nitrogen,starter,5 lb,,\n2026-10-02,east,nitrogen,starter,5 lb,,", "", ""},
		{"2026-10-01,east,nitrogen,,missed,,\n2026-10-01,east,nitrogen,,missed,,", "job", "~the same as line 2"}, {"2026-10-01,east,nitrogen/2026-1,,missed,,\n2026-10-01,east,nitrogen/2026-1,,missed,,", "", ""},
	} {
		_, ps := LoadRecord("r.csv", []byte(ShortHeader+c.line+"\n"), s)
		said, fatal := at(ps, c.column)
		want, warning := strings.CutPrefix(c.says, "~")
		if want == "" && len(ps) > 0 || want != "" && (!strings.Contains(said, want) || fatal == warning) {
			t.Errorf("%s: %v; want %s", c.line, ps, c.says)
		}
	}
}
