package ask

import "sync"

// dictionary is what deflate has seen before the answers, the likeliest last. Codes in the
// world were made with it, so it stays as it is: see version.
var dictionary = sync.OnceValue(func() []byte {
	out := []byte(words)
	for _, a := range likely {
		out, _ = pack(out, a)
	}
	return out
})
