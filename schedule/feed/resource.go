package feed

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"encoding/base64"
	"encoding/hex"
	"net/http"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// mark identifies the bytes of a file without keeping them.
type mark struct {
	tag      [12]byte // the start of their SHA-256
	size     int
	modified time.Time // when they changed
}

// zips tells whether there is a compressed form.
func (m *mark) zips() bool { return m.size >= leastZipped }

// resource is a file ready to be sent: its bytes and the headers that go with
// them, which are never changed again.
type resource struct {
	mark
	body   []byte
	tag    [2]string   // of the plain and of the compressed form
	tags   [2][]string // the same as the header map wants them
	length []string
	always []headerLine // in every 200
	cached []headerLine // in every 200 and 304

	used atomic.Bool // since the cache last made room
	once sync.Once
	zip  []byte // made by the first who asks for it
	zlen []string
}

// headerLine is one header, its key in the form that the map wants.
type headerLine struct {
	key    string
	values []string
}

// leastZipped is the size below which compression saves no packet.
const leastZipped = 1400 // [common]

// newResource makes a file ready that takes the place of another, whose mark
// may be nil. modified is when the bytes changed; with the same bytes the time
// of the other stays, and else it comes out later even when both changes fell
// within a second. private keeps shared caches and search engines away.
func newResource(f file, was *mark, modified time.Time, private bool) *resource {
	sum := sha256.Sum256(f.body)
	m := mark{size: len(f.body), modified: modified.UTC().Truncate(time.Second)}
	copy(m.tag[:], sum[:])
	if was != nil {
		switch {
		case was.tag == m.tag:
			m.modified = was.modified
		case !m.modified.After(was.modified):
			m.modified = was.modified.Add(time.Second)
		}
	}
	r := m.bare(private)
	r.body, r.length = f.body, []string{strconv.Itoa(len(f.body))}
	if private {
		r.add(&r.always, "X-Robots-Tag", "noindex")
	}
	r.add(&r.always, "Content-Type", f.kind)
	for _, l := range securityHeaders(f) {
		r.add(&r.always, l[0], l[1])
	}
	return r
}

// bare is the resource without its body, which is enough to tell whoever holds
// the body that it is still so.
func (m mark) bare(private bool) *resource {
	r := &resource{mark: m}
	r.nameAfter(m)
	cache := "no-cache" // keep it, but ask every time whether it is still so
	if private {
		cache = "private, no-cache"
	}
	r.add(&r.cached, "Cache-Control", cache)
	r.add(&r.cached, "Last-Modified", m.modified.Format(http.TimeFormat))
	if m.zips() {
		r.add(&r.cached, "Vary", "Accept-Encoding")
	}
	return r
}

// nameAfter gives the resource the tags of a mark.
func (r *resource) nameAfter(m mark) {
	tag := hex.EncodeToString(m.tag[:])
	r.tag = [2]string{`"` + tag + `"`, `"` + tag + `-gz"`}
	r.tags = [2][]string{r.tag[:1:1], r.tag[1:2:2]}
}

// zipped is the compressed form and its length.
func (r *resource) zipped() ([]byte, []string) {
	r.once.Do(func() {
		r.zip = compress(r.body)
		r.zlen = []string{strconv.Itoa(len(r.zip))}
	})
	return r.zip, r.zlen
}

func (r *resource) add(to *[]headerLine, key, value string) {
	*to = append(*to, headerLine{http.CanonicalHeaderKey(key), []string{value}})
}

func compress(b []byte) []byte {
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.DefaultCompression)
	if err != nil {
		panic(err) // the level is a constant
	}
	w.Write(b) // a buffer takes everything
	w.Close()
	return out.Bytes()
}

// securityHeaders keep a page from asking anybody anything, from being framed,
// and from telling where a link was followed from.
func securityHeaders(f file) [][2]string {
	out := [][2]string{
		{"X-Content-Type-Options", "nosniff"},
		{"Referrer-Policy", "no-referrer"},
		{"Cross-Origin-Resource-Policy", "same-origin"},
	}
	switch f.kind {
	case htmlType:
		out = append(out, [2]string{"Content-Security-Policy", policy(f.body)})
	case tomlType, csvType:
		out = append(out, [2]string{"Content-Disposition", `attachment; filename="` + f.path + `"`})
	}
	return out
}

// policy allows the page its own style sheets, by their hashes, forms to its
// own server, and nothing else.
func policy(html []byte) string {
	var hashes strings.Builder
	for rest := html; ; {
		_, after, ok := bytes.Cut(rest, []byte("<style>"))
		if !ok {
			break
		}
		sheet, after, ok := bytes.Cut(after, []byte("</style>"))
		if !ok {
			break
		}
		sum := sha256.Sum256(sheet)
		hashes.WriteString(" 'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'")
		rest = after
	}
	if hashes.Len() == 0 {
		hashes.WriteString(" 'none'")
	}
	return "default-src 'none'; style-src" + hashes.String() + "; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
}
