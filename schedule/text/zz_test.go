package text

import ("testing";"fmt";"sort")

func TestZZ(t *testing.T) {
	m := texts(t, false, Style{Width: 120, Today: date(t, "2026-09-12")})
	var k []string
	for n := range m { k = append(k, n) }
	sort.Strings(k)
	for _, n := range k { fmt.Printf("=== %s\n%s", n, m[n]) }
}
