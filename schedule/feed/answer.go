package feed

import (
	"net/http"
	"strings"
	"time"
)

// The forms of a resource.
const (
	plainForm  = 0
	zippedForm = 1
)

// weigh tells with what status a request is answered, and which form it gets.
func (r *resource) weigh(q *http.Request) (status, form int) {
	if r.zips() {
		if acceptsGzip(q.Header["Accept-Encoding"]) {
			form = zippedForm
		}
		// A client may ask plain for what it holds compressed, or the reverse. It
		// has the content all the same, and is told so by the tag that it knows.
		other := 1 - form
		if none := q.Header["If-None-Match"]; none != nil && q.Header["If-Match"] == nil &&
			!listed(none, r.tag[form], true) && listed(none, r.tag[other], true) {
			form = other
		}
	}
	return condition(q.Header, r.tag[form], r.modified), form
}

// answer sends a resource: 200, 304 or 412. It gives the status and the bytes
// of the body that were sent.
func (r *resource) answer(w http.ResponseWriter, q *http.Request) (status, sent int) {
	status, form := r.weigh(q)
	h := w.Header()
	h["Etag"] = r.tags[form]
	for i := range r.cached {
		h[r.cached[i].key] = r.cached[i].values
	}
	if status != http.StatusOK {
		w.WriteHeader(status)
		return status, 0
	}
	for i := range r.always {
		h[r.always[i].key] = r.always[i].values
	}
	body, length := r.body, r.length
	if form == zippedForm {
		body, length = r.zipped()
		h["Content-Encoding"] = gzipValue
	}
	h["Content-Length"] = length
	w.WriteHeader(http.StatusOK)
	if q.Method == http.MethodHead {
		return status, 0
	}
	if c, ok := q.Context().Value(placedKey{}).(*placed); ok {
		c.expect(len(body))
	}
	sent, _ = w.Write(body) // a reader that has gone away is nothing to report
	return status, sent
}

var gzipValue = []string{"gzip"}

// condition weighs the conditional headers of a GET or HEAD in the order of RFC
// 9110, section 13.2.2, and gives 200, 304 or 412. A date that cannot be read
// is as good as none.
func condition(h http.Header, etag string, modified time.Time) int {
	if match, ok := h["If-Match"]; ok {
		if !listed(match, etag, false) {
			return http.StatusPreconditionFailed
		}
	} else if since, ok := date(h["If-Unmodified-Since"]); ok && modified.After(since) {
		return http.StatusPreconditionFailed
	}
	if none, ok := h["If-None-Match"]; ok {
		if listed(none, etag, true) {
			return http.StatusNotModified
		}
	} else if since, ok := date(h["If-Modified-Since"]); ok && !modified.After(since) {
		return http.StatusNotModified
	}
	return http.StatusOK
}

// date reads the one value of a date header.
func date(values []string) (time.Time, bool) {
	if len(values) != 1 {
		return time.Time{}, false
	}
	t, err := http.ParseTime(values[0])
	return t, err == nil
}

// listed tells whether a list of entity tags holds the tag, or is "*". Weak
// comparison takes W/"x" for "x"; strong comparison knows no weak tags. What
// cannot be read ends the list.
func listed(lists []string, etag string, weak bool) bool {
	for _, s := range lists {
		if s == etag || strings.TrimSpace(s) == "*" {
			return true
		}
		for {
			s = strings.TrimLeft(s, " \t,")
			rest, isWeak := strings.CutPrefix(s, "W/")
			if !strings.HasPrefix(rest, `"`) {
				break
			}
			end := strings.IndexByte(rest[1:], '"')
			if end < 0 {
				break
			}
			if rest[:end+2] == etag && (weak || !isWeak) {
				return true
			}
			s = strings.TrimLeft(rest[end+2:], " \t")
			if s != "" && s[0] != ',' {
				break
			}
		}
	}
	return false
}

// acceptsGzip tells whether gzip is asked for: named, or meant by "*", and not
// with a weight of zero (RFC 9110, section 12.5.3).
func acceptsGzip(values []string) bool {
	any, named, gzip := false, false, false
	for _, s := range values {
		for part := range strings.SplitSeq(s, ",") {
			name, weight, _ := strings.Cut(part, ";")
			switch name = strings.TrimSpace(name); {
			case strings.EqualFold(name, "gzip"), strings.EqualFold(name, "x-gzip"):
				named, gzip = true, gzip || !zero(weight)
			case name == "*":
				any = !zero(weight)
			}
		}
	}
	return gzip || any && !named
}

// zero tells a weight of 0 to three places, "q=0.000".
func zero(weight string) bool {
	name, q, ok := strings.Cut(strings.TrimSpace(weight), "=")
	if !ok || !strings.EqualFold(strings.TrimSpace(name), "q") {
		return false
	}
	q = strings.TrimSpace(q)
	return q != "" && strings.Trim(q, "0.") == "" && strings.HasPrefix(q, "0")
}
