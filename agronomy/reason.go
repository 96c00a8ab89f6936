package agronomy

// Reason is one step of a working, or one ground for a decision: words for a
// reader, and the key of the source behind it. An empty Source marks plain
// arithmetic or a fact from the site file. Several keys are joined with ", ".
type Reason struct {
	Text   string `json:"text"`
	Source string `json:"source,omitzero"`
}
