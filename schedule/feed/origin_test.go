package feed

import "testing"

// Behind a proxy that changes the host, a form still comes from the public
// address, and from nowhere else.
func TestFormThroughAProxy(t *testing.T) {
	w := recording(t)
	for _, c := range []struct {
		origin string
		want   int
	}{
		{"http://example.org", 403},
		{"https://example.org:8443", 403},
		{"https://sub.example.org", 403},
		{"https://example.org", 200},
	} {
		if r := w.post(w.open("east/lime/1"), "Host", "127.0.0.1:8080", "Origin", c.origin); r.StatusCode != c.want {
			t.Errorf("from %s: %d, want %d", c.origin, r.StatusCode, c.want)
		}
	}
}
