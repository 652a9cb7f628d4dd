package cases

import "time"

// Result is how somebody practised on a case.
type Result struct {
	Trainee     string    `json:"trainee"`
	Class       string    `json:"class"` // empty: alone
	CaseID      string    `json:"case"`
	Title       string    `json:"title"` // of the case, should it be gone one day
	Finished    time.Time `json:"finished"`
	Named       Cause     `json:"named"`
	Truth       Cause     `json:"truth"`
	Confidence  float64   `json:"confidence"` // 0 to 1
	Bits        float64   `json:"score_bits"`
	Minutes     float64   `json:"minutes"`
	BestMinutes float64   `json:"best_minutes"` // of the program's own way; 0: not known
	Bought      []string  `json:"bought"`       // in their order
}

// Class is a list of cases for an evening.
type Class struct {
	Name  string
	Cases []string // ids in their order
}
