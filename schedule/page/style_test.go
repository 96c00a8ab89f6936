package page

import (
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"maps"
	"math"
	"regexp"
	"strings"
	"testing"
	"time"

	"swardbook/schedule"
)

// palettes reads the colours of the style sheet: light, dark, print.
func palettes(t *testing.T) map[string]map[string]string {
	t.Helper()
	out := map[string]map[string]string{}
	light := map[string]string{}
	for i, block := range regexp.MustCompile(`:root \{[^}]*\}`).FindAllString(style(), -1) {
		colors := map[string]string{}
		maps.Copy(colors, light)
		for _, m := range regexp.MustCompile(`--([a-z0-9]+): (#[0-9a-f]+);`).FindAllStringSubmatch(block, -1) {
			colors[m[1]] = m[2]
		}
		if i == 0 {
			light = colors
		}
		if strings.Contains(block, "#") {
			out[fmt.Sprintf("palette %d", i+1)] = colors
		}
	}
	if len(out) != 3 {
		t.Fatalf("%d palettes in the style sheet, want light, dark and print", len(out))
	}
	return out
}

// luminance and contrast are those of WCAG 2.2.
func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	if len(hex) == 4 {
		hex = "#" + strings.Repeat(hex[1:2], 2) + strings.Repeat(hex[2:3], 2) + strings.Repeat(hex[3:4], 2)
	}
	var c [3]int
	if _, err := fmt.Sscanf(hex, "#%02x%02x%02x", &c[0], &c[1], &c[2]); err != nil {
		t.Fatalf("%q: %v", hex, err)
	}
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		v := float64(c[i]) / 255
		if v <= 0.04045 {
			v /= 12.92
		} else {
			v = math.Pow((v+0.055)/1.055, 2.4)
		}
		sum += weight * v
	}
	return sum
}

func contrast(t *testing.T, a, b string) float64 {
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestContrast(t *testing.T) {
	if c := contrast(t, "#000", "#ffffff"); math.Abs(c-21) > 1e-9 {
		t.Fatalf("black on white is %.2f, want 21", c)
	}
	for name, p := range palettes(t) {
		for _, pair := range []struct {
			on, what string
			least    float64
		}{
			{"ground", "ink", 7},    // running text, better than AA
			{"ground", "soft", 4.5}, // small print
			{"ground", "due", 4.5},  // the days that close
			{"tint", "ink", 7},
			{"tint", "due", 4.5},
			{"tint2", "ink", 7},
		} {
			if c := contrast(t, p[pair.on], p[pair.what]); c < pair.least {
				t.Errorf("%s: %s on %s has contrast %.2f, want %.1f", name, pair.what, pair.on, c, pair.least)
			}
		}
	}
}

// Every variable that the style sheet uses is set.
func TestStyleVariablesAreSet(t *testing.T) {
	for _, m := range regexp.MustCompile(`var\((--[a-z0-9]+)\)`).FindAllStringSubmatch(style(), -1) {
		if !strings.Contains(style(), "  "+m[1]+":") && !strings.Contains(style(), " "+m[1]+":") {
			t.Errorf("%s is used and not set", m[1])
		}
	}
	if strings.Contains(style(), "url(") || strings.Contains(style(), "@import") {
		t.Error("the style sheet asks for something")
	}
}

// The policy names the very bytes of the style, or a browser drops it.
func TestPolicyAllowsTheStyle(t *testing.T) {
	b, err := render("comparison.html", &comparisonView{head: newHead("x")})
	if err != nil {
		t.Fatal(err)
	}
	m := regexp.MustCompile(`(?s)<style>(.*?)</style>`).FindSubmatch(b)
	if m == nil {
		t.Fatal("no style")
	}
	sum := sha256.Sum256(m[1])
	if want := base64.StdEncoding.EncodeToString(sum[:]); !strings.Contains(newHead("x").Policy, "'sha256-"+want+"'") {
		t.Errorf("the policy %q lacks sha256-%s", newHead("x").Policy, want)
	}
}

func TestSpanOfDays(t *testing.T) {
	d := func(y, m, day int) schedule.Date { return schedule.Date{Year: y, Month: time.Month(m), Day: day} }
	for want, s := range map[string][2]schedule.Date{
		"12 Sep to 21 Nov 2026":     {d(2026, 9, 12), d(2026, 11, 21)},
		"12 Sep 2026 to 3 Mar 2027": {d(2026, 9, 12), d(2027, 3, 3)},
		"12 Sep 2026":               {d(2026, 9, 12), d(2026, 9, 12)},
		"":                          {{}, d(2026, 9, 12)},
	} {
		if got := span(s[0], s[1]); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
