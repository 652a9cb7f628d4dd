package physics

// StoredKJ is the heat that the lumps hold over 0 °C.
func (s *Sim) StoredKJ() float64 {
	sum := 0.0
	for i, c := range s.cap[:s.waxRow] {
		sum += c * s.in.Y[i]
	}
	return sum
}

// TakenKJ is the heat taken in less the heat given off since the start.
func (s *Sim) TakenKJ() float64 { return s.in.Y[s.account] }
