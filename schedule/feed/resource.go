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
	"time"
)

// resource is a file ready to be sent: its bytes, plain and compressed, and
// the headers that go with them, which are never changed again.
type resource struct {
	plain, zipped variant // zipped has no body where that would save nothing
	modified      time.Time
	private       bool
	always        []headerLine // in every 200
	cached        []headerLine // in every 200 and 304
}

// variant is one representation of a resource.
type variant struct {
	body []byte
	etag string
	// the values of ETag and Content-Length, as the header map wants them
	tag, length []string
}

// headerLine is one header, its key in the form that the map wants.
type headerLine struct {
	key    string
	values []string
}

// leastZipped is the size below which compression saves no packet.
const leastZipped = 1400 // [common]

func newVariant(body []byte, etag string) variant {
	return variant{body, etag, []string{etag}, []string{strconv.Itoa(len(body))}}
}

// newResource makes a file ready that takes the place of another, which may be
// nil; with the same bytes that stays. modified is when the bytes changed; it
// comes out later than before even when both changes fell within a second.
// private keeps shared caches and search engines away.
func newResource(f file, was *resource, modified time.Time, private bool) *resource {
	sum := sha256.Sum256(f.body)
	tag := hex.EncodeToString(sum[:12])
	r := &resource{plain: newVariant(f.body, `"`+tag+`"`), modified: modified.UTC().Truncate(time.Second), private: private}
	if was != nil {
		switch {
		case was.plain.etag == r.plain.etag && was.private == private:
			return was
		case !r.modified.After(was.modified):
			r.modified = was.modified.Add(time.Second)
		}
	}
	cache := "no-cache" // keep it, but ask every time whether it is still so
	if private {
		cache = "private, no-cache"
		r.add(&r.always, "X-Robots-Tag", "noindex")
	}
	r.add(&r.cached, "Cache-Control", cache)
	r.add(&r.cached, "Last-Modified", r.modified.Format(http.TimeFormat))
	if len(f.body) >= leastZipped {
		if z := compress(f.body); len(z) < len(f.body) {
			r.zipped = newVariant(z, `"`+tag+`-gz"`)
			r.add(&r.cached, "Vary", "Accept-Encoding")
		}
	}
	r.add(&r.always, "Content-Type", f.kind)
	for _, l := range securityHeaders(f) {
		r.add(&r.always, l[0], l[1])
	}
	return r
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
	if f.kind == htmlType {
		out = append(out, [2]string{"Content-Security-Policy", policy(f.body)})
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
