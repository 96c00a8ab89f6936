package ask

import (
	"bytes"
	"cmp"
	"compress/flate"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"slices"
	"strings"
	"testing"

	"swardbook/schedule/sitefile"
)

// plainLawn is what a homeowner answers with a laboratory's sheet at hand.
var plainLawn = Answers{
	{Key: "title", Value: "Lawn behind the house"}, {Key: "start", Value: "2027-04-19"}, {Key: "place.zip", Value: "21771"},
	{Key: "area.lawn.size", Value: "3150 sq ft"}, {Key: "area.lawn.grass", Value: "Kentucky bluegrass"}, {Key: "area.lawn.seeded", Value: "2026-08-28"},
	{Key: "area.lawn.soil.sampled", Value: "2027-03-30"}, {Key: "area.lawn.soil.method", Value: "mehlich-1"}, {Key: "area.lawn.soil.ph", Value: "5.7"},
	{Key: "area.lawn.soil.buffer.method", Value: "adams-evans"}, {Key: "area.lawn.soil.buffer.ph", Value: "7.6"},
	{Key: "area.lawn.soil.phosphorus", Value: "37 lb/acre"}, {Key: "area.lawn.soil.potassium", Value: "112 lb/acre"}, {Key: "area.lawn.soil.magnesium", Value: "94 lb/acre"},
	{Key: "material.bag1.name", Value: "pelletized limestone"}, {Key: "material.bag1.kind", Value: "lime"}, {Key: "material.bag1.cce", Value: "92"}, {Key: "material.bag1.pack", Value: "40 lb"}, {Key: "material.bag1.on_hand", Value: "3"},
	{Key: "material.bag2.analysis", Value: "22-2-8"}, {Key: "material.bag2.pack", Value: "36 lb"}, {Key: "material.bag2.on_hand", Value: "0.5"},
	{Key: "area.lawn.care", Value: "medium"}, {Key: "area.lawn.clippings", Value: "returned"},
}

var someID = ID{0xfe, 2, 3, 0x40, 5, 6, 7, 0xfa}

func TestCode(t *testing.T) {
	code, err := Encode(plainLawn, someID)
	if err != nil || len(code) > 180 {
		t.Fatalf("%d characters: %s, %v", len(code), code, err)
	}
	a, err := Decode(code)
	if err != nil || !slices.Equal(a.Set("id", ""), plainLawn.Tidy()) {
		t.Errorf("%v, %v", a, err)
	}
	if id, ok := IDOf(a); id != someID || !ok {
		t.Errorf("id %v %v", id, ok)
	}
	if again, _ := Encode(slices.Concat(a[5:], a[:5]), someID); again != code {
		t.Error("other order, other code")
	}
	if ps := Problems(a); len(ps) > 0 {
		t.Error(ps)
	}
	for _, bad := range []string{"", "aaaaaaaaaaaa", "aaaaaaaaaaaaaa", "AAAAAAAAAAAAA", "odderwyn-7q2m"} {
		if _, ok := IDOf(Answers{{Key: "id", Value: bad}}); ok {
			t.Errorf("%q is the id of a link", bad)
		}
	}
}

// What was once written is read for good, whatever else has changed since: these codes
// stand in calendars. If this fails, mend what you changed, never the codes.
func TestOldCodes(t *testing.T) {
	if got := fmt.Sprintf("%x", sha256.Sum256(dictionary()))[:16]; got != "0a864bb87f437877" {
		t.Errorf("the dictionary is another: %s", got)
	}
	for _, c := range []struct {
		code string
		want Answers
	}{
		{"Af4CA0AFBgf6AvtfISk1IzMvRaEkI1UhI7-0OJURHFkGJrqGlkxGhubmhhB_GBuawnyCGeBQD1noGllg85G5roGxrrEB3EuG3KZ65jxIxSCvuZ4Zn7E5rLznNzQ0grEFLE1gTML-NYJ62BjiYUiiFQEnT1EDPVNAAAAA__8", plainLawn.Tidy()},
		{"Af4CA0AFBgf6TJNFcxZMEIS_DwqHC1ZIb8U9bzI9s7Mzi-sBd9ccOCAJrlXw26nwXnJ7jk93V_8n_xOLVbBgfZNiUImlqliuBqkVrA6tDVYDtSa8djQXhBPpiu6GY14xb4nj7jjhbWRtZfUVTnoM4ZTnEE57_9fGUY3NNjLMmAMSo5pbHGeabM-tbVvgbCPONcX5Zjs6xrRj3GQnZRe5m7qHhgut4mJzTBgxaYpLreNyCK4EcTUU18JwPSpuhONmNNyKwO1I3ImOuym4l8T91I0SK93wIA0Ps-JROh5nw5MMPM3Es-x43gUvOvGyK15TiDcUxVuK4R2lYpXiWKM0vKcEPlASHykdn0jBZ5L4Qiq-koZvZF2f46DqXiamzDBtdaPOd9Lxg2z72DFjjllr-EkGfpGJ31TuVzmgxB-qllGqYc6ijFFrGad6maC2MkmNMkXNMk3tZYYm6-ezMkvjIa1ljqZlnmaH1csCrZZFmpcBrR3RVpZoUZZpWYTW_wYAAP__", every().Tidy()},
	} {
		a, err := Decode(c.code)
		if err != nil || !slices.Equal(a.Set("id", ""), c.want) {
			t.Errorf("%s: %v\n%q, not\n%q", c.code, err, a, c.want)
		}
	}
}

// every gives an answer to each key of the first table, each its own number.
func every() Answers {
	var a Answers
	names := map[string]string{"record": "1", "area": "lawn", "material": "bag"}
	for i, key := range table[:firstTable] {
		head, _, _ := strings.Cut(key, ".")
		key = strings.Replace(key, "*", cmp.Or(names[head], "name"), 1)
		key = strings.Replace(key, "*", "2026-08-11", 1)
		if strings.HasSuffix(key, "grass") || strings.HasSuffix(key, ".job") || readings[key[strings.LastIndexByte(key, '.')+1:]] {
			continue // the table of that name is here
		}
		a = append(a, Answer{Key: key, Value: fmt.Sprint(i)})
	}
	return a
}

// firstTable is how many keys version 1 began with.
const firstTable = 141

var readings = map[string]bool{"phosphorus": true, "potassium": true, "calcium": true, "magnesium": true, "sulfur": true, "sodium": true, "iron": true}

// Each key of a site file and each column of a record book has a number, or is one that
// no address carries.
func TestTable(t *testing.T) {
	seen := map[string]bool{}
	for _, key := range table {
		if seen[key] {
			t.Errorf("%s has two numbers", key)
		}
		seen[key] = true
	}
	keys := sitefile.Keys()
	for column := range strings.SplitSeq(strings.TrimSpace(sitefile.Header), ",") {
		keys = append(keys, "record.*."+column)
	}
	for _, key := range keys {
		if key == "id" || key == "place.normals" || below(key, "calendar") || strings.HasSuffix(key, ".buffer") || strings.HasSuffix(key, ".fineness") {
			if seen[key] {
				t.Errorf("%s has a number", key)
			}
			continue
		}
		if !seen[key] {
			t.Errorf("%s has no number: add it at the end of the table, or to unshared", key)
		}
		if rest, soil := strings.CutPrefix(key, "area.*.soil."); soil && !seen["area.*.soil.*."+rest] {
			t.Errorf("area.*.soil.*.%s has no number", rest)
		}
	}
}

func packed(t *testing.T, plain []byte, level int) string {
	t.Helper()
	var b bytes.Buffer
	b.WriteByte(version)
	b.Write(someID[:])
	w, err := flate.NewWriterDict(&b, level, dictionary())
	if err != nil {
		t.Fatal(err)
	}
	w.Write(plain)
	w.Close()
	return base64.RawURLEncoding.EncodeToString(b.Bytes())
}

func TestHostileCodes(t *testing.T) {
	good, _ := Encode(plainLawn, someID)
	plain, _ := plainLawn.serial()
	if _, err := Decode(packed(t, plain, flate.HuffmanOnly)); err != nil {
		t.Errorf("packed by another compressor: %v", err)
	}
	raw, _ := base64.RawURLEncoding.DecodeString(good)
	two, _ := Answers{{Key: "place.zip", Value: "44109"}}.serial()
	zip := two[len(two)-6:]
	title := func(s string) []byte { return append([]byte{0}, s...) }
	long := Answers{}
	for i := range 500 {
		long = append(long, Answer{Key: fmt.Sprintf("material.m%d.price", i), Value: "1"})
	}
	longPlain, _ := pack(nil, long)
	codes := map[string]string{
		"empty":             "",
		"no code":           "hello",
		"two letters":       "AQ",
		"the id alone":      base64.RawURLEncoding.EncodeToString(raw[:9]),
		"cut":               good[:len(good)-9],
		"a byte more":       base64.RawURLEncoding.EncodeToString(append(slices.Clone(raw), 0)),
		"a letter more":     good + "A",
		"padding":           good + "=",
		"a line break":      good[:20] + "\n" + good[20:],
		"other alphabet":    good[:20] + "+" + good[21:],
		"version 0":         "AA" + good[2:],
		"version 2":         "Ag" + good[2:],
		"too long":          good + strings.Repeat("A", maxCode),
		"a bomb":            packed(t, bytes.Repeat([]byte("\x00aaaaaaaaaaaaaaa"), 60_000), 9),
		"one large value":   packed(t, title(strings.Repeat("a", maxPlain-1)), 9),
		"too many":          packed(t, longPlain, 9),
		"not UTF-8":         packed(t, title("a\xff"), 9),
		"half a letter":     packed(t, title("a\xc3"), 9),
		"turned text":       packed(t, title("a\u202eb"), 9),
		"a line separator":  packed(t, title("a\u2028b"), 9),
		"delete":            packed(t, title("a\x7fb"), 9),
		"no such key":       packed(t, []byte("\x1e~x"), 9),
		"half a key":        packed(t, []byte("\x1c"), 9),
		"a bad key":         packed(t, []byte("\x1c\x7fx"), 9),
		"name without key":  packed(t, []byte("\x1flawn"), 9),
		"key without name":  packed(t, []byte("\x032600 sq ft"), 9),
		"names too many":    packed(t, []byte("\x1fa\x1fb\x032600 sq ft"), 9),
		"no value":          packed(t, append(title(""), zip...), 9),
		"other order":       packed(t, append(slices.Clone(zip), title("x")...), 9),
		"twice":             packed(t, append(title("x"), title("x")...), 9),
		"spaces":            packed(t, title(" x"), 9),
		"a number in words": packed(t, []byte("\x1flawn\x0b5.70"), 9),
		"name twice":        packed(t, []byte("\x1flawn\x032600 sq ft\x1flawn\x04tall fescue"), 9),
		"text before":       packed(t, append([]byte("x"), title("x")...), 9),
	}
	for name, code := range codes {
		if a, err := Decode(code); err == nil {
			t.Errorf("%s: %v", name, a)
		}
	}
	for _, code := range []string{packed(t, title("x"), 9), packed(t, []byte("\x1flawn\x032600 sq ft\x04tall fescue"), 9), packed(t, []byte("\x1flawn\x0b5.7"), 9)} {
		if _, err := Decode(code); err != nil {
			t.Errorf("the measure of these is off: %v", err)
		}
	}
}

// Ids that look like a way out of a folder are text like any other, and no site.
func TestPathsInIDs(t *testing.T) {
	for _, id := range []string{"..", "../..", "/etc", `a\b`, "a b", "<script>", "a%2fb"} {
		a := plainLawn.Set(sitefile.JoinPath("area", id, "size"), "2600 sq ft").Set(sitefile.JoinPath("area", id, "grass"), "tall fescue")
		code, err := Encode(a, someID)
		if err != nil {
			t.Fatal(err)
		}
		b, err := Decode(code)
		if site, _, ps := Load(b, nil); err != nil || site != nil || len(ps) == 0 {
			t.Errorf("area %q: %v %v %v", id, site, ps, err)
		}
	}
}

func TestTooMuch(t *testing.T) {
	for what, a := range map[string]Answers{
		"areas":      many("area.x%d.size", 9),
		"lines":      many("record.%d.note", 61),
		"answers":    many("material.x%d.price", 401),
		"characters": many("material.x%d.name", 150),
		"control":    {{Key: "title", Value: "a\x01b"}},
		"long":       {{Key: "title", Value: strings.Repeat("x", 801)}},
	} {
		if code, err := Encode(a, someID); err == nil {
			t.Errorf("%s: %d characters", what, len(code))
		}
	}
}

func many(key string, n int) (a Answers) {
	for i := range n {
		sum := sha256.Sum256(fmt.Append(nil, key, i))
		a = append(a, Answer{Key: fmt.Sprintf(key, i), Value: fmt.Sprintf("%x", sum[:6])})
	}
	return a
}

func FuzzCode(f *testing.F) {
	for _, a := range []Answers{plainLawn, every(), {}, many("record.%d.note", 10)} {
		code, err := Encode(a, someID)
		if err != nil {
			f.Fatal(err)
		}
		raw, _ := base64.RawURLEncoding.DecodeString(code)
		plain, _ := a.serial()
		f.Add(raw, plain)
	}
	f.Fuzz(func(t *testing.T, raw, plain []byte) {
		for _, code := range []string{base64.RawURLEncoding.EncodeToString(raw), string(raw), packed(t, plain, 1)} {
			a, err := Decode(code)
			if err != nil {
				continue
			}
			id, ok := IDOf(a)
			again, err := Encode(a, id)
			if err != nil {
				if len(again) == 0 && strings.Contains(err.Error(), "make an address of") {
					continue // another compressor packed it tighter
				}
				t.Fatalf("%q: %v", a, err)
			}
			b, err := Decode(again)
			if err != nil || !ok || !slices.Equal(a, b) {
				t.Errorf("%q, then %q, %v", a, b, err)
			}
			Problems(a)
		}
	})
}
