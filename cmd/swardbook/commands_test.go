package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"swardbook/climate"
	"swardbook/cmd/swardbook/flag"
	"swardbook/schedule"
)

// inFern gives a folder with a copy of the reading lawn of the scripts, and its name.
func inFern(t *testing.T, book string) (file string) {
	t.Helper()
	dir := t.TempDir()
	if err := copyInto(dir, "testdata/site"); err != nil {
		t.Fatal(err)
	}
	file = filepath.Join(dir, "fern.toml")
	if book != "" {
		if err := os.WriteFile(filepath.Join(dir, "fern.record.csv"), []byte(book), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return file
}

// The exit status of a command says what kind of end it was: done, could not read or
// write, wrong use, errors in the site file, and what --strict asks for.
func TestExitStatus(t *testing.T) {
	for _, c := range []struct {
		err  error
		want int
	}{{errors.New("disk"), 1}, {misuse("so"), 2}, {fmt.Errorf("in %w", misuse("so")), 2}, {siteError(errors.New("line 3")), 3}, {fmt.Errorf("in %w", siteError(errors.New("line 3"))), 3}, {exit{code: exitDiffers}, 4}} {
		if got := exitOf(c.err); got.code != c.want {
			t.Errorf("%v: %d, want %d", c.err, got.code, c.want)
		}
	}
	if (exit{code: 3}).Error() != "" || (exit{3, errors.New("x")}).Error() != "x" {
		t.Error("what is told already has no words")
	}
	for n, want := range map[int]string{0: "", 1: "1 job was left out", 2: "2 jobs were left out"} {
		p := &schedule.Program{LeftOut: make([]schedule.LeftOut, n)}
		if err := strictly(false, p); err != nil {
			t.Errorf("%d, not strict: %v", n, err)
		}
		err := strictly(true, p)
		if (err == nil) != (want == "") || err != nil && (err.Error() != want || exitOf(err).code != 4) {
			t.Errorf("%d: %v, want %q", n, err, want)
		}
	}
	for n, want := range map[int]string{0: "0 areas", 1: "1 area", 2: "2 areas"} {
		if got := count(n, "area"); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// A command takes exactly the arguments that its usage names; the error names the one
// that is missing or too many.
func TestArguments(t *testing.T) {
	for _, c := range []struct {
		args       []string
		what, says string
	}{
		{nil, "FILE", "FILE is missing"}, {[]string{"a"}, "FILE", ""}, {[]string{"a", "b"}, "FILE", `"b" is one argument too many`},
		{nil, "FILE JOB", "FILE is missing: give FILE JOB"}, {[]string{"a"}, "FILE JOB", "JOB is missing: give FILE JOB"}, {[]string{"a", "b"}, "FILE JOB", ""}, {[]string{"a", "b", "c", "d"}, "FILE JOB", `"c" is one argument too many`}, {[]string{"a"}, "", `"a" is one argument too many`}, {nil, "", ""},
	} {
		if err := exactly(c.args, c.what); (err == nil) != (c.says == "") || err != nil && err.Error() != c.says {
			t.Errorf("%q for %q: %v", c.args, c.what, err)
		}
	}
	for _, c := range []struct {
		args string
		code int
		says string
	}{
		{"soil", 2, "FILE is missing"}, {"why FILE", 2, "JOB is missing"}, {"why FILE east/nothing", 2, "east/nothing"}, {"compare FILE", 2, "a second FILE is missing, or --vary KEY=VALUES"}, {"compare FILE FILE FILE", 2, "is one argument too many"}, {"check FILE --taken", 2, "--taken goes with --fill"},
		{"record FILE east/lime/1 half --missed", 2, "--missed and an amount cannot both be"}, {"record FILE east/lime/1 --instead", 2, "--instead: no line about east/lime/2026-1 is on record"}, {"record FILE site/last-safe/1", 2, "marks a day; there is nothing to do"}, {"record FILE lime --area north", 2, "north"},
		{"soil FILE --format xml", 2, "xml"}, {"soil FILE --today soon", 2, "soon"}, {"soil FILE --area north", 2, "north"}, {"program nope.toml", 1, "could not read nope.toml: "}, {"program .", 1, "could not read .: it is a folder, not a file"}, {"program FILE -o FILE", 2, "is read here, so it is not written over"},
		{"climate OH 6a extra", 2, `"extra" is one argument too many`}, {"climate 123456", 1, "could not read"}, {"climate 4410x", 1, "could not read"}, {"climate 44109,", 1, "could not read"}, {"climate 6a", 2, "a half-zone needs its state, as in: swardbook climate OH 6a"}, {"climate oh", 2, "swardbook climate OH 6a"},
		{"publish DIR -o DIR", 2, "holds the site files; choose another folder"}, {"publish DIR", 2, "-o is missing: name the folder to write to"}, {"publish DIR -o -", 2, "-o is missing"}, {"publish DIR -o out --jobs -1", 2, "--jobs: give 1 to 1000"}, {"publish DIR -o out --jobs 1001", 2, "--jobs: give 1 to 1000"}, {"publish --ask -o out", 2, "--ask needs --planner"}, {"publish DIR --planner p -o out", 2, "--planner goes with --ask"},
		{"new extra", 2, `"extra" is one argument too many`}, {"new --id a_b", 2, "--id: "}, {"new -o FILE", 1, "is there already; choose another name"},
	} {
		file := inFern(t, "")
		args := strings.Fields(strings.NewReplacer("FILE", file, "DIR", filepath.Dir(file)).Replace(c.args))
		out, talk, code := sward(args...)
		if code != c.code || !strings.Contains(talk, c.says) || out != "" {
			t.Errorf("%s: %d, %s%s; want %d, %s", c.args, code, out, talk, c.code, c.says)
		}
	}
}

// --shard takes a part of a whole, written 3/40: any part from the first to the last.
func TestShard(t *testing.T) {
	for given, want := range map[string][2]int{"": {}, "1/1": {1, 1}, "3/40": {3, 40}, "40/40": {40, 40}} {
		if got, err := shardFlag(given); err != nil || got.K != want[0] || got.N != want[1] {
			t.Errorf("%q: %v, %v", given, got, err)
		}
	}
	for _, given := range []string{"0/40", "41/40", "3", "3/", "/3", "a/3", "3/b", "-1/3", "1/0"} {
		if got, err := shardFlag(given); err == nil || !strings.Contains(err.Error(), "is no part of a whole; write 3/40") {
			t.Errorf("%q: %v, %v", given, got, err)
		}
	}
}

// Reading stops at a limit: a site file of a megabyte and a record book of four are read
// whole, and one byte more is refused as too large, not cut.
func TestReadNoMore(t *testing.T) {
	file := inFern(t, "")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	full := func(text []byte, size int) []byte {
		return append(append(slices.Clone(text), '\n', '#'), strings.Repeat("x", size-len(text)-2)...)
	}
	for size, code := range map[int]int{1 << 20: 0, 1<<20 + 1: 3, 1<<20 + 9: 3} {
		if err := os.WriteFile(file, full(text, size), 0o666); err != nil {
			t.Fatal(err)
		}
		if _, talk, got := sward("check", file); got != code || code == 3 && !strings.Contains(talk, "1048577 bytes, more than the 1048576 that are read") {
			t.Errorf("%d bytes: %d, %s", size, got, talk)
		}
		var out, talk strings.Builder
		if got := run(context.Background(), []string{"check", "-"}, strings.NewReader(string(full(text, size))), &out, &talk, func(string) string { return "" }, time.Now); got != code {
			t.Errorf("%d bytes from standard input: %d, %s", size, got, talk.String())
		}
	}
	book := filepath.Join(filepath.Dir(file), "fern.record.csv")
	if err := os.WriteFile(file, text, 0o666); err != nil {
		t.Fatal(err)
	}
	for size, code := range map[int]int{4 << 20: 0, 4<<20 + 1: 3} {
		if err := os.WriteFile(book, full(nil, size), 0o666); err != nil {
			t.Fatal(err)
		}
		if _, talk, got := sward("check", file); got != code || code == 3 && !strings.Contains(talk, "more than the 4194304 that are read") {
			t.Errorf("a book of %d bytes: %d, %.300s", size, got, talk)
		}
	}
}

// A result goes to standard output or into a file, never both.
func TestWhereAResultGoes(t *testing.T) {
	file := inFern(t, "")
	want, talk, code := sward("soil", file, "--format", "csv")
	if code != 0 || want == "" {
		t.Fatal(talk)
	}
	if got, _, _ := sward("soil", file, "--format", "csv", "-o", "-"); got != want {
		t.Errorf("-o - wrote %q", got)
	}
	to := filepath.Join(filepath.Dir(file), "out.csv")
	out, talk, code := sward("soil", file, "--format", "csv", "-o", to)
	if got, err := os.ReadFile(to); err != nil || string(got) != want || out != "" || talk != "" || code != 0 {
		t.Errorf("%v: %q and %q %q", err, got, out, talk)
	}
	for format, begins := range map[string]string{"text": "", "json": "{\n  \"format\": 1,", "csv": "area,", "markdown": "|"} {
		if got, talk, code := sward("soil", file, "--format", format); code != 0 || !strings.HasPrefix(strings.TrimLeft(got, "# \n"), begins) || format == "text" && got == want {
			t.Errorf("%s: %.80s %s", format, got, talk)
		}
	}
}

// What check says for machines: problems with their places, and what is assumed.
func TestCheckForMachines(t *testing.T) {
	file := inFern(t, "date,area,job,material,amount,by,note\n2026-10-19,east,lime,,half,,\n")
	out, _, code := sward("check", file, "--format", "json", "--today", "2026-09-30")
	var got checked
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 || got.Format != 1 || got.File != file || !got.Fine || len(got.Assumptions) == 0 || len(got.LeftOut) == 0 {
		t.Fatalf("%v %d: %s", err, code, out)
	}
	var said []string
	for _, p := range got.Problems {
		if !p.Warning || p.Line != 2 || !strings.HasSuffix(p.File, "fern.record.csv") {
			t.Errorf("%+v", p)
		}
		said = append(said, p.Key+": "+p.Message)
	}
	if all := strings.Join(said, "\n"); len(said) != 2 || !strings.Contains(all, "job: the line is short") || !strings.Contains(all, "date: 19 Oct 2026 is still to come") {
		t.Errorf("%s", all)
	}
	if out, talk, code := sward("check", file, "--today", "2026-10-19"); code != 0 || !strings.Contains(strings.Join(strings.Fields(out), " "), "fern.toml: fine: 2 areas, 2 materials, 1 job on record") || strings.Contains(talk, "still to come") {
		t.Errorf("on the day itself: %s%s", out, talk)
	}
	if _, talk, code := sward("check", file, "--today", "2026-10-19", "--strict"); code != 4 || !strings.HasSuffix(talk, "swardbook: 1 warning\n") {
		t.Errorf("%d, %s", code, talk)
	}
}

// Short lines are written whole; a book without any is left alone, and one that was
// written to meanwhile is not written over.
func TestFillOrLeave(t *testing.T) {
	file := inFern(t, "date,area,job,material,amount,by,note\n2026-10-19,east,lime,,half,,\n")
	book := filepath.Join(filepath.Dir(file), "fern.record.csv")
	out, talk, code := sward("check", file, "--fill", "--today", "2026-10-20")
	filled, _ := os.ReadFile(book)
	if code != 0 || !strings.HasSuffix(out, "fern.record.csv: 1 line written whole, 0 added as taken.\n") || !strings.Contains(string(filled), "2026-10-19,east,lime,2026,") {
		t.Errorf("%d %s%s: %s", code, out, talk, filled)
	}
	out, _, code = sward("check", file, "--fill", "--today", "2026-10-20")
	if again, _ := os.ReadFile(book); code != 0 || out != "Every line stands by itself: nothing to do.\n" || string(again) != string(filled) {
		t.Errorf("%d %s", code, out)
	}
	if out, _, code = sward("check", file, "--fill", "--taken", "--today", "2026-10-20"); code != 0 || !strings.Contains(out, ": 0 lines written whole, ") || strings.Contains(out, ", 0 added") {
		t.Errorf("%d %s", code, out)
	}
	now, _ := os.ReadFile(book)
	two := inFern(t, "date,area,job,material,amount,by,note\n2026-09-17,east,starter,,half,,\n2026-09-17,west,starter,,half,,\n")
	if out, _, code = sward("check", two, "--fill", "--taken", "--today", "2026-11-10"); code != 0 || !strings.Contains(out, ": 2 lines written whole, 2 added") {
		t.Errorf("as many added as written: %d %s", code, out)
	}
	if err := rewriteRecord(book, filled, []byte("x\n")); err == nil || !strings.HasSuffix(err.Error(), "somebody has written to it meanwhile; try again") {
		t.Error(err)
	}
	if got, _ := os.ReadFile(book); string(got) != string(now) {
		t.Errorf("it was written over: %s", got)
	}
	if err := rewriteRecord(book, now, []byte("x\n")); err != nil {
		t.Error(err)
	}
	if got, _ := os.ReadFile(book); string(got) != "x\n" {
		t.Errorf("%s", got)
	}
	var o, talked strings.Builder
	if code := run(context.Background(), []string{"check", "-", "--fill"}, strings.NewReader(string(must(os.ReadFile(file)))), &o, &talked, func(string) string { return "" }, time.Now); code != 2 || !strings.Contains(talked.String(), "has no record book beside it") {
		t.Errorf("%d %s", code, talked.String())
	}
}

func must(data []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return data
}

// The answer to record names the line that was written, the lines that it replaces, and
// what changes in the program.
func TestRecordAnswers(t *testing.T) {
	file := inFern(t, "")
	record := func(args ...string) string {
		t.Helper()
		out, talk, code := sward(append([]string{"record", file}, args...)...)
		if code != 0 {
			t.Fatalf("%q: %s", args, talk)
		}
		return out
	}
	first := record("east/lime/1", "half", "--today", "2026-10-20", "--by", "mara", "--note", "ran out")
	if !strings.HasPrefix(first, "Recorded in ") || !strings.Contains(first, ",mara,ran out") || !strings.Contains(first, "In the program: ") {
		t.Error(first)
	}
	beside := record("east/lime/1", "half", "--today", "2026-10-20", "--date", "2026-10-19", "--sure")
	if !strings.Contains(beside, "; --instead would take its place.") || !strings.Contains(beside, "2026-10-19,east,lime") {
		t.Error(beside)
	}
	instead := record("east/lime/1", "half", "--today", "2026-10-20", "--instead")
	if !strings.Contains(instead, "It takes the place of ") || !strings.Contains(instead, "struck out.") {
		t.Error(instead)
	}
	text := string(must(os.ReadFile(filepath.Join(filepath.Dir(file), "fern.record.csv"))))
	live := 0
	for line := range strings.Lines(text) {
		if strings.HasPrefix(line, "2026-") {
			live++
		}
	}
	if live != 1 {
		t.Errorf("%d lines count:\n%s", live, text)
	}
	if out, talk, code := sward("record", file, "east/lime/1", "--today", "2026-10-20", "--date", "2026-10-25"); code != 2 || out != "" || !strings.Contains(talk, "--sure") {
		t.Errorf("a day still to come: %d %s", code, talk)
	}
}

// The programs of --vary: what differs from the file as it stands, and which value
// makes no difference.
func TestVariants(t *testing.T) {
	file := inFern(t, "")
	var got comparedShown
	out, talk, code := sward("compare", file, "--vary", "hardiness=6a,6b", "--format", "json")
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 || got.Format != 1 || got.First != "as it stands" || len(got.Programs) != 2 {
		t.Fatalf("%v: %s%s", err, out, talk)
	}
	if a, b := got.Programs[0], got.Programs[1]; a.Label != "6a" || len(a.Changes) != 0 || b.Label != "6b" || len(b.Changes) == 0 || b.Note != "" {
		t.Errorf("%d and %d changes, %q", len(a.Changes), len(b.Changes), b.Note)
	}
	out, _, _ = sward("compare", file, "--vary", "hardiness=6a", "--format", "json")
	if err := json.Unmarshal([]byte(out), &got); err != nil || len(got.Programs) != 1 || got.Programs[0].Note != "The same program as the file as it stands." || !strings.Contains(out, `"changes": []`) {
		t.Errorf("%v: %s", err, out)
	}
	placed := filepath.Join(filepath.Dir(file), "placed.toml")
	for values, want := range map[string]string{"6b": "The same program as the file as it stands. Without ", "6a,6b": "The same program as with 6a. Without place.latitude or place.longitude the two would differ: what stands there decides."} {
		out, _, _ = sward("compare", placed, "--vary", "hardiness="+values, "--format", "json")
		if err := json.Unmarshal([]byte(out), &got); err != nil || !strings.HasPrefix(got.Programs[len(got.Programs)-1].Note, want) {
			t.Errorf("%v: %s", err, out)
		}
	}
	for args, want := range map[string]int{"--exit-code --vary hardiness=6a": 0, "--exit-code --vary hardiness=6b": 4, "--vary hardiness=6b": 0, "--exit-code " + filepath.Join(filepath.Dir(file), "larger.toml"): 4, "--exit-code " + file: 0} {
		if _, talk, code := sward(append([]string{"compare", file}, strings.Fields(args)...)...); code != want {
			t.Errorf("%s: %d, want %d: %s", args, code, want, talk)
		}
	}
	if out, _, _ = sward("compare", file, "--vary", "hardiness=6b", "--format", "html"); !strings.Contains(out, "hardiness = 6b") || strings.Contains(out, "hardiness = as it stands") {
		t.Error("the page does not say which key was varied")
	}
}

// A place's year for machines is that of package climate, day by day and date by date.
func TestClimateForMachines(t *testing.T) {
	y, err := climate.Place{State: "OH", Hardiness: "6a"}.Year()
	if err != nil {
		t.Fatal(err)
	}
	out, talk, code := sward("climate", "oh", "6A", "--format", "json")
	var got climateShown
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 || got.Format != 1 || got.Title != "OH, hardiness zone 6a" || got.Place.State != "OH" || got.Place.Hardiness != "6a" || len(got.Days) != 365 || len(got.Events) != len(y.Events()) || len(got.Sowing) != 4 {
		t.Fatalf("%v %s: %.300s", err, talk, out)
	}
	near := func(a, b, by float64) bool { return a-b <= by/2+1e-9 && b-a <= by/2+1e-9 }
	for i, r := range y.Table() {
		d := got.Days[i]
		if !near(d.Mean, float64(r.Mean), 0.1) || !near(d.High, float64(r.High), 0.1) || !near(d.Low, float64(r.Low), 0.1) || !near(d.Soil2, float64(r.Soil2), 0.1) || !near(d.Soil4, float64(r.Soil4), 0.1) || !near(d.Cool, r.GrowthCool, 0.001) || !near(d.Warm, r.GrowthWarm, 0.001) || !near(d.DegreeDays, r.DegreeDays50, 1) {
			t.Fatalf("%+v, want %+v", d, r)
		}
		if d.Mean != rounded(d.Mean, 1) || d.Cool != rounded(d.Cool, 3) {
			t.Errorf("%+v is not rounded", d)
		}
	}
	if got.Days[0].Date != "01-01" || got.Days[58].Date != "02-28" || got.Days[59].Date != "03-01" || got.Days[364].Date != "12-31" {
		t.Errorf("days %s, %s, %s to %s", got.Days[0].Date, got.Days[58].Date, got.Days[59].Date, got.Days[364].Date)
	}
	for i, e := range y.Events() {
		ev := got.Events[i]
		if ev.Name != e.Name || ev.Never != e.When.Never || (ev.Date == "") != e.When.Never || !e.When.Never && (ev.Day != int(e.When.Day()) || ev.Date != isoDay(e.When.Day())) || (ev.Early == "") != (e.When.Never || e.When.Quantile) || ev.Early != "" && (ev.Early != isoDay(e.When.EarlyDay()) || ev.Late != isoDay(e.When.LateDay()) || !near(ev.Spread, e.When.SD, 0.1)) {
			t.Errorf("%+v, want %+v", ev, e)
		}
	}
	autumn := y.SeedWindow(climate.Cool).Main
	if s := got.Sowing[0]; s.Name != "cool_autumn" || s.First != isoDay(autumn.Open.Day()) || s.Best != isoDay(autumn.Best.Day()) || s.Last != isoDay(autumn.Close.Day()) || !near(s.Freeze, autumn.FreezeOdds, 0.01) || !near(s.Spread, autumn.Close.SD, 0.1) {
		t.Errorf("%+v", s)
	}
	for v, want := range map[float64]float64{1.25: 1.3, 1.24: 1.2, -1.26: -1.3, 0: 0} {
		if got := rounded(v, 1); got != want {
			t.Errorf("%v: %v", v, got)
		}
	}
}

// Why a job stands where it does, for machines: the entry itself and its grounds, and of
// one that is left out the reason.
func TestWhyForMachines(t *testing.T) {
	file := inFern(t, "")
	out, talk, code := sward("why", file, "east/lime/1", "--format", "json")
	var got map[string]any
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 || got["id"] != "east/lime/2026-1" || len(got["grounds"].([]any)) == 0 {
		t.Errorf("%v %s: %.300s", err, talk, out)
	}
	var program struct {
		LeftOut []struct{ ID, Reason string } `json:"left_out"`
	}
	out, _, _ = sward("check", file, "--format", "json")
	if err := json.Unmarshal([]byte(out), &program); err != nil || len(program.LeftOut) == 0 {
		t.Fatal(err, out)
	}
	left := program.LeftOut[0]
	out, _, code = sward("why", file, left.ID, "--format", "json")
	clear(got)
	if err := json.Unmarshal([]byte(out), &got); err != nil || code != 0 || got["id"] != left.ID || got["reason"] != left.Reason {
		t.Errorf("%v: %s", err, out)
	}
	if out, _, code = sward("why", file, left.ID); code != 0 || !strings.Contains(strings.Join(strings.Fields(out), " "), left.Reason[1:30]) {
		t.Errorf("%s", out)
	}
}

// A place by its ZIP code or its position, and nothing that only looks like one.
func TestNamedPlaces(t *testing.T) {
	for arg, want := range map[string]string{"44109": "44109", "4410": "", "441090": "", "4410a": "", "41.5,-81.7": "41.5 -81.7", " 41.5 , -81.7": "41.5 -81.7", "41.5": "", "41.5,x": "", "x,-81.7": ""} {
		p, ok := namedPlace(arg)
		got := p.ZIP
		if ok && got == "" {
			got = fmt.Sprintf("%v %v", *p.Latitude, *p.Longitude)
		}
		if ok != (want != "") || ok && got != want {
			t.Errorf("%q: %q, %t", arg, got, ok)
		}
	}
	for file, want := range map[string]string{"-": "", "lawn.toml": "lawn.record.csv", "a/b.toml": "a/b.record.csv", "lawn": "lawn.record.csv"} {
		if got := recordBeside(file); got != want {
			t.Errorf("%s: %s", file, got)
		}
	}
	if !errors.As(misuse("x"), new(flag.Misuse)) || samePath("a/../b", "b") != true || samePath("a", "b") {
		t.Error("paths")
	}
}
