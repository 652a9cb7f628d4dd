// Package anonymous makes a case that can be shown to strangers: without the
// customer, and without what leads back to one. It tells what goes and which
// texts stay, since a person must have read those.
//
// Goes: the customer's name and contact, wherever they are typed; all of the
// vehicle's number but its maker's and model's signs; the day (times keep
// their distance from the case's first of the month); the odometer's last three
// figures; keys that this program doesn't know; the pictures' own notes on where,
// when and by what they were taken; file names; the logs as they came from the
// scan tool, which may hold positions and serial numbers (their samples stay).
// What a picture shows can't be judged here: it stays.
package anonymous

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"

	"loopbook/cases"
)

// Hidden stands where words were taken out.
const Hidden = "[…]"

// Kind says what sort of thing goes or stays.
type Kind string

// The kinds of what goes, and of what stays to be read.
const (
	Customer  Kind = "customer"
	Number    Kind = "vin"
	Times     Kind = "times"
	Odometer  Kind = "odometer"
	Identity  Kind = "id"
	Unknown   Kind = "unknown-keys"
	Words     Kind = "words"      // a name or the like in a text
	Notes     Kind = "notes"      // in a picture's file
	LogFile   Kind = "log-file"   // as it came from the scan tool
	OtherFile Kind = "other-file" // that can't be looked into
	FreeText  Kind = "text"       // stays: a text that a person wrote
	PictureOf Kind = "picture"    // stays: what it shows
)

// Line is one thing that goes or stays.
type Line struct {
	Kind  Kind
	Where string // the place in the case, as repair.parts[0].name, or a file's name
	Was   string // as it stands; for times and files what is known of them
	Now   string // empty where nothing is left
}

// Preview is all that goes and all that stays to be read.
type Preview struct{ Goes, Stays []Line }

// Bare takes a picture's own notes out of its file: photo.Bare, or one like it.
// An error is of a file that it can't look into.
type Bare func(data []byte) (clean []byte, ending string, notes int, err error)

// Make is b without its customer. also are further words to hide: a plate, a
// street, a colleague. The case given stays as it is.
func Make(b cases.Bundle, also []string, bare Bare) (cases.Bundle, Preview, error) {
	text, err := cases.Encode(b.Case)
	if err != nil {
		return cases.Bundle{}, Preview{}, err
	}
	c, err := cases.Decode(text) // apart from the one given
	if err != nil {
		return cases.Bundle{}, Preview{}, err
	}
	m := &maker{hide: secrets(c, also), files: b.Files, bare: bare, renamed: map[string]string{}}
	out := cases.Bundle{Files: m.pack(&c)}
	m.id(&c, text)
	m.customer(&c)
	m.vehicle(&c.Vehicle)
	m.times(&c)
	m.texts(&c)
	out.Case = c
	return out, m.told, nil
}

type maker struct {
	hide    words
	files   map[string][]byte
	bare    Bare
	renamed map[string]string // names in the bundle that is made, by the old ones
	told    Preview
}

func (m *maker) goes(k Kind, where, was, now string) {
	m.told.Goes = append(m.told.Goes, Line{k, where, was, now})
}

func (m *maker) stays(k Kind, where, text string) {
	m.told.Stays = append(m.told.Stays, Line{k, where, text, text})
}

// id gives the case another: its own holds the millisecond of its beginning. The
// same case gets the same one, so that who is given it twice has it once.
func (m *maker) id(c *cases.Case, text []byte) {
	sum := sha256.Sum256(text)
	was := c.ID
	c.ID = "anonymous-" + hex.EncodeToString(sum[:10])
	m.goes(Identity, "id", was, c.ID)
}

func (m *maker) customer(c *cases.Case) {
	for _, f := range []struct {
		where string
		text  *string
	}{{"customer.name", &c.Customer.Name}, {"customer.contact", &c.Customer.Contact}} {
		if *f.text != "" {
			m.goes(Customer, f.where, *f.text, "")
			*f.text = ""
		}
	}
}

func (m *maker) vehicle(v *cases.Vehicle) {
	if v.VIN != "" {
		was := v.VIN
		v.VIN = makerAndModel(was)
		m.goes(Number, "vehicle.vin", was, v.VIN)
	}
	if km := v.OdometerKm; km != nil && *km != math.Round(*km/1000)*1000 {
		round := math.Round(*km/1000) * 1000
		m.goes(Odometer, "vehicle.odometer_km", fmt.Sprintf("%.0f", *km), fmt.Sprintf("%.0f", round))
		v.OdometerKm = &round
	}
}

// makerAndModel are the first eight signs of a vehicle's number (ISO 3779: the
// maker, and what it builds); the check digit, the year, the plant and the serial
// number come after. Of an older, shorter number nothing is known.
func makerAndModel(vin string) string {
	tidy := strings.ToUpper(together(vin))
	if len(tidy) != 17 {
		return ""
	}
	return tidy[:8]
}

// pack keeps the files that can be looked into, under names that say nothing.
func (m *maker) pack(c *cases.Case) map[string][]byte {
	names := make([]string, 0, len(m.files))
	for name := range m.files {
		names = append(names, name)
	}
	slices.Sort(names)
	out := map[string][]byte{}
	for _, name := range names {
		data := m.files[name]
		clean, ending, notes, err := m.bare(data)
		switch {
		case err == nil:
			now := fmt.Sprintf("photos/%d%s", len(out)+1, ending)
			m.renamed[name], out[now] = now, clean
			if notes > 0 {
				m.goes(Notes, name, strconv.Itoa(notes), "")
			}
			m.stays(PictureOf, name, now)
		case isLog(name):
			m.goes(LogFile, name, strconv.Itoa(len(data)), "")
		default:
			m.goes(OtherFile, name, strconv.Itoa(len(data)), "")
		}
	}
	m.photos(c)
	return out
}

// photos name the new files; one whose file is left out keeps its caption.
func (m *maker) photos(c *cases.Case) {
	for i := range c.Photos {
		c.Photos[i].File = m.renamed[c.Photos[i].File]
	}
	c.Photos = slices.DeleteFunc(c.Photos, func(p cases.Photo) bool { return p.File == "" && p.Caption == "" })
}

func isLog(name string) bool {
	return slices.Contains([]string{".csv", ".txt", ".tsv", ".log"}, strings.ToLower(path.Ext(name)))
}
