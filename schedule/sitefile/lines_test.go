package sitefile

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

func TestLines(t *testing.T) {
	text := strings.Join([]string{
		`a = 1 # [not.a.table]`,   // 1
		`"quoted key" = "x # y"`,  // 2
		`'single' = '''`,          // 3
		`b = 2`,                   // 4
		`'''`,                     // 5
		`text = """ \""" [x]`,     // 6
		`y = "" """""`,            // 7
		`list = [ # one`,          // 8
		`  "a]", 'b"', [1, 2],`,   // 9
		`  { in = 1 },`,           // 10
		`]`,                       // 11
		`[ place . "the state" ]`, // 12
		`mix = { "x.y" = 60, z = { w = "}" }, v = 1 }`, // 13
		`after.that = true`,                            // 14
		``,                                             // 15
		`[area.east.soil]`,                             // 16
		`ph = 5`,                                       // 17
		`[area.east]`,                                  // 18
		`[area.west]`,                                  // 19
	}, "\n")
	want := map[string]int{
		"a": 1, `"quoted key"`: 2, "single": 3, "text": 6, "list": 8, "list.in": 10,
		"place": 12, `place."the state"`: 12, `place."the state".mix`: 13, `place."the state".mix."x.y"`: 13,
		`place."the state".mix.z`: 13, `place."the state".mix.z.w`: 13, `place."the state".mix.v`: 13,
		`place."the state".after`: 14, `place."the state".after.that`: 14,
		"area": 16, "area.east": 16, "area.east.soil": 16, "area.east.soil.ph": 17, "area.west": 19,
	}
	for _, ending := range []string{"\n", "\r\n"} {
		got := map[string]int{}
		for k, s := range scan(strings.ReplaceAll(text, "\n", ending)).spots {
			got[k] = s.line
		}
		if !maps.Equal(got, want) {
			for _, k := range slices.Sorted(maps.Keys(got)) {
				if got[k] != want[k] {
					t.Errorf("ending %q: %s on line %d, want %d", ending, k, got[k], want[k])
				}
			}
			for k := range want {
				if got[k] == 0 {
					t.Errorf("ending %q: %s not found", ending, k)
				}
			}
		}
	}
}

// keysOf checks that the scan finds every key that the TOML library does.
func keysOf(t *testing.T, text string) {
	t.Helper()
	l := scan(text)
	if l.deep > 0 {
		return
	}
	var v any
	md, err := toml.Decode(text, &v)
	if err != nil {
		return
	}
	for _, k := range md.Keys() {
		path := ""
		for _, part := range k {
			path = join(path, part)
		}
		if strings.Contains(path, `\`) { // escapes in quoted keys may differ
			continue
		}
		if _, ok := l.spots[path]; !ok {
			t.Errorf("%q: no line for %s", text, path)
		}
	}
}

func TestLinesAgreeWithLibrary(t *testing.T) {
	keysOf(t, string(mustRead(t, "testdata/full.toml")))
	keysOf(t, starter)
	keysOf(t, "a.'b c'.\"d\" = [{x=1},{y=[{z=2}]}]\n[[t]]\nu=1\n[[t]]\nw=2\n")
}
