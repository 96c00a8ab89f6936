package schedule

// Change is one difference between two programs.
type Change struct {
	ID   string `json:"id"`
	What string `json:"what"` // "moved", "grew", "shrank", "appeared", "vanished", "left out", "changed"
	Text string `json:"text"`
	Was  Date   `json:"was,omitzero"`
	Is   Date   `json:"is,omitzero"`
}
