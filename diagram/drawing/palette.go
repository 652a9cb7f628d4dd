package drawing

import "image/color"

// Role is what a colour means, whatever the light.
type Role string

// The roles.
const (
	Paper      Role = "paper"
	Card       Role = "card"
	Rail       Role = "rail"
	Text       Role = "text"
	Soft       Role = "soft" // second-rank text
	Rule       Role = "rule" // thin lines between things
	Edge       Role = "edge" // of an entry
	PipeEdge   Role = "pipe-edge"
	Accent     Role = "accent"
	OnAccent   Role = "on-accent"
	Chosen     Role = "chosen"
	PartFill   Role = "part"
	PartLine   Role = "part-line"
	Bar        Role = "bar"
	Expected   Role = "expected"
	ActText    Role = "act-text"
	ActGround  Role = "act-ground"
	ActSign    Role = "act-sign"
	LookText   Role = "look-text"
	LookGround Role = "look-ground"
	LookSign   Role = "look-sign"
	NoteText   Role = "note-text"
	NoteGround Role = "note-ground"
	NoteSign   Role = "note-sign"
	FineText   Role = "fine-text"
	FineGround Role = "fine-ground"
	Coolant    Role = "coolant"
)

// Palette gives every role its colour.
type Palette map[Role]color.NRGBA

// The signs' fills are the colour-blind safe set of Okabe and Ito (2008),
// "Color Universal Design". The grounds and texts hold a contrast of at least
// 4.5 : 1 (WCAG 2.1, 1.4.3).

// Light is the palette for a lit workshop, and for paper.
func Light() Palette {
	return Palette{
		Paper: rgb(0xF7F3EA), Card: rgb(0xFFFDF8), Rail: rgb(0xEFE9DC),
		Text: rgb(0x20262B), Soft: rgb(0x565B5E), Rule: rgb(0xD8CFBE), Edge: rgb(0x8A8374), PipeEdge: rgb(0x4E4B44),
		Accent: rgb(0x00609A), OnAccent: rgb(0xFFFFFF), Chosen: rgb(0xE2EDF3),
		PartFill: rgb(0xE6E1D5), PartLine: rgb(0x6E6A60), Bar: rgb(0xE3DCCD), Expected: rgb(0x857D69),
		ActText: rgb(0x9C3C00), ActGround: rgb(0xFBE7DA), ActSign: rgb(0xD55E00),
		LookText: rgb(0x6F4C00), LookGround: rgb(0xFAF0D4), LookSign: rgb(0xE69F00),
		NoteText: rgb(0x005A8C), NoteGround: rgb(0xDFECF4), NoteSign: rgb(0x0072B2),
		FineText: rgb(0x00644A), FineGround: rgb(0xDCEFE7), Coolant: rgb(0xB8D6E4),
	}
}

// Dark is the palette for a dim bay.
func Dark() Palette {
	return Palette{
		Paper: rgb(0x14181B), Card: rgb(0x1D2327), Rail: rgb(0x181D20),
		Text: rgb(0xF1EDE4), Soft: rgb(0xB5B1A6), Rule: rgb(0x343B40), Edge: rgb(0x77808A), PipeEdge: rgb(0xA9AFB3),
		Accent: rgb(0x7CC4EE), OnAccent: rgb(0x0C1820), Chosen: rgb(0x1F3441),
		PartFill: rgb(0x2A3136), PartLine: rgb(0x98A0A6), Bar: rgb(0x30373C), Expected: rgb(0x87929A),
		ActText: rgb(0xFFA570), ActGround: rgb(0x3A2417), ActSign: rgb(0xD55E00),
		LookText: rgb(0xF5C662), LookGround: rgb(0x35290F), LookSign: rgb(0xE69F00),
		NoteText: rgb(0x8ECBF0), NoteGround: rgb(0x162B38), NoteSign: rgb(0x56B4E9),
		FineText: rgb(0x6FD6B4), FineGround: rgb(0x12302A), Coolant: rgb(0x2C4A5C),
	}
}

func rgb(v uint32) color.NRGBA {
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xFF}
}
