package ask

import (
	"bytes"
	"compress/flate"
	"encoding/base32"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"strings"

	"swardbook/schedule/sitefile"
)

// A code is base64url without padding of: a byte for the version, the eight bytes of the
// id, and the answers (serial.go), deflated with a preset dictionary (dictionary.go).
// Whatever a version once wrote is read for good: a change of table or dictionary that
// gives another meaning to codes in the world needs a new version.
const version = 1

// Limits of a code. [common] a QR code of 1,500 characters can still be read off a screen;
// the others are far above what fits into that by honest means
const (
	maxCode    = 1500    // characters
	maxPlain   = 8 << 10 // bytes of answers, inflated
	maxAnswers = 400
	maxAreas   = 8
	maxLines   = 60 // of the record book
)

// ID tells links apart, and is the site's id in the calendar. It must be drawn at random: the
// events of two sites with one id would have the same UIDs.
type ID [8]byte

var letters = base32.NewEncoding("abcdefghijklmnopqrstuvwxyz234567").WithPadding(base32.NoPadding)

// String gives the id as it stands in the site file.
func (id ID) String() string { return letters.EncodeToString(id[:]) }

// IDOf gives the id of answers that came from a code.
func IDOf(a Answers) (id ID, ok bool) {
	text := a.Get("id")
	n, err := letters.Decode(id[:], []byte(text)[:min(len(text), 13)])
	return id, err == nil && n == len(id) && id.String() == text
}

// Encode gives the code that carries the answers, all but their own id, in whose place
// comes the one given. What no address may carry must be taken out before ([Share]).
func Encode(a Answers, id ID) (string, error) {
	plain, err := a.Set("id", "").serial()
	if err != nil {
		return "", err
	}
	var b bytes.Buffer
	b.WriteByte(version)
	b.Write(id[:])
	w, err := flate.NewWriterDict(&b, flate.BestCompression, dictionary())
	if err == nil {
		_, err = w.Write(plain)
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		return "", fmt.Errorf("packing the answers: %w", err)
	}
	code := base64.RawURLEncoding.EncodeToString(b.Bytes())
	if len(code) > maxCode || len(plain) > maxPlain {
		return "", fmt.Errorf("the answers make an address of %d characters, and %d are the most: leave out areas, materials or record lines, or keep a site file", len(code), maxCode)
	}
	return code, nil
}

var errCode = errors.New("the address is not whole: it was cut or changed on its way")

// Decode gives the answers of a code, its id first. A code that no Encode could have
// written is refused: other answers, or the same in another order, or anything after them.
func Decode(code string) (Answers, error) {
	if len(code) > maxCode || strings.ContainsAny(code, "\r\n") {
		return nil, errCode
	}
	raw, err := base64.RawURLEncoding.Strict().DecodeString(code)
	if err != nil || len(raw) < 1+len(ID{}) {
		return nil, errCode
	}
	if raw[0] != version {
		return nil, fmt.Errorf("the address has version %d, and this server reads %d: it is of another release", raw[0], version)
	}
	var id ID
	raw = raw[1+copy(id[:], raw[1:]):]
	in := bytes.NewReader(raw)
	plain, err := io.ReadAll(io.LimitReader(flate.NewReaderDict(in, dictionary()), maxPlain+1))
	if err != nil || len(plain) > maxPlain || in.Len() > 0 {
		return nil, errCode
	}
	a, err := parse(plain)
	if err != nil {
		return nil, err
	}
	// Only the answers are compared, not the packed bytes: another release of the
	// compressor may pack the same answers differently.
	if again, err := a.serial(); err != nil || !bytes.Equal(again, plain) {
		return nil, errCode
	}
	return append(Answers{{Key: "id", Value: id.String()}}, a...), nil
}

// carried says what keeps an answer out of an address; nil if nothing does.
func carried(one Answer) error {
	if len(one.Value) > 4*maxText || strings.ContainsFunc(one.Value, sitefile.Unsightly) {
		return fmt.Errorf("%s: is longer than %d characters, or holds a control character", one.Key, maxText)
	}
	return nil
}

// maxText is the most characters of one answer, as in a site file.
const maxText = 200
