package ical

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	ics "github.com/arran4/golang-ical"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ in, text, line string }{
		{"", "", ""},
		{" a \r\n b\t\tc ", "a\nb c", "a b c"},
		{"a\n\n\n\nb", "a\n\nb", "a b"},
		{"\n\na\n \n \nb\n\n", "a\n\nb", "a b"},
		{"a\rb\vc\fd\u0085e\u2028f\u2029g", "a\nb\nc\nd\ne\nf\ng", "a b c d e f g"},
		{"\uFEFFa\x00\x1f\x7f\xff\uFFFDb", "ab", "ab"},
		{"<b>less</b> than & more", "‹b›less‹/b› than & more", "‹b›less‹/b› than & more"},
		{"a\u202eb\u2066c\u200fd\u061ce", "abcde", "abcde"},
		{"½ bag – 20 °F 🌱", "½ bag – 20 °F 🌱", "½ bag – 20 °F 🌱"},
	} {
		if got := clean(c.in); got != c.text {
			t.Errorf("clean(%q) = %q, want %q", c.in, got, c.text)
		}
		if got := oneLine(c.in); got != c.line {
			t.Errorf("oneLine(%q) = %q, want %q", c.in, got, c.line)
		}
	}
}

// pieces are what makes folding and escaping hard.
var pieces = []string{" ", "  ", "\\", "\n", "\r\n", ",", ";", ":", "½", "–", "🌱", "a", "word", strings.Repeat("x", 80),
	"https://example.org/", "\t", "\x00", "\u2028", "\xff", "<", "é", "\\n", "\u00a0", "\u3000"}

func randomText(r *rand.Rand) string {
	var b strings.Builder
	for range r.IntN(120) {
		b.WriteString(pieces[r.IntN(len(pieces))])
	}
	return b.String()
}

// TestFoldRandom folds cleaned, escaped texts: no physical line is too long or
// ends in a blank, in half a character or in half an escape, and unfolding
// gives the text back.
func TestFoldRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		text := clean(randomText(r))
		if again := clean(text); again != text {
			t.Fatalf("cleaning twice: %q, %q", text, again)
		}
		line := "DESCRIPTION:" + ics.ToText(text)
		folded := string(fold(nil, []byte(line)))
		if got := strings.ReplaceAll(strings.TrimSuffix(folded, "\r\n"), "\r\n ", ""); got != line {
			t.Fatalf("unfolds to %q, want %q", got, line)
		}
		if got := ics.FromText(strings.TrimPrefix(line, "DESCRIPTION:")); got != text {
			t.Fatalf("unescapes to %q, want %q", got, text)
		}
		for piece := range strings.SplitSeq(strings.TrimSuffix(folded, "\r\n"), "\r\n") {
			backs := len(piece) - len(strings.TrimRight(piece, `\`))
			if len(piece) > 75 || !utf8.ValidString(piece) || strings.HasSuffix(piece, " ") || backs%2 == 1 || strings.HasPrefix(piece, "  ") {
				t.Fatalf("bad piece %q of %q", piece, line)
			}
		}
	}
}

// TestFoldAnything holds for octets that were never cleaned, too.
func TestFoldAnything(t *testing.T) {
	for _, line := range []string{strings.Repeat(" ", 300), strings.Repeat("\\", 301), strings.Repeat("\xbd", 300), strings.Repeat("a ", 200)} {
		folded := string(fold(nil, []byte(line)))
		if got := strings.ReplaceAll(strings.TrimSuffix(folded, "\r\n"), "\r\n ", ""); got != line {
			t.Errorf("%q unfolds to %q", line, got)
		}
	}
}

func TestNames(t *testing.T) {
	for _, c := range [][2]string{
		{"Odderwyn, north; old\\new", "Odderwyn north old new"},
		{"The very long name of a very small lawn behind the library", "The very long name of a very small lawn"},
		{strings.Repeat("ü", 50), strings.Repeat("ü", 40)},
	} {
		if got := plainName(c[0], 40); got != c[1] {
			t.Errorf("plainName(%q) = %q, want %q", c[0], got, c[1])
		}
	}
	for link, want := range map[string]string{
		"https://example.org/lawn/": "https://example.org/lawn/", "HTTP://example.org/ü": "http://example.org/%C3%BC",
		"https://example.org/a b": "https://example.org/a%20b", "ftp://example.org": "", "example.org": "", "": "",
		"https:///x": "", "https://example.org/?a={b}": "", "https://example.org/\r\nX:1": "", "javascript:alert(1)": "",
	} {
		if got, ok := webLink(link); got != want || ok != (want != "") {
			t.Errorf("webLink(%q) = %q, %v", link, got, ok)
		}
	}
}

func TestSourced(t *testing.T) {
	if got := sourced("A dose.", "common, definitions, MD Code 8-803"); got != "A dose (common practice; MD Code 8-803)." {
		t.Errorf("sourced: %q", got)
	}
	if got := sourced("A dose.", "3 Del. Admin. Code 1201, § 6.2"); got != "A dose (3 Del. Admin. Code 1201, § 6.2)." {
		t.Errorf("a law's citation: %q", got)
	}
}
