// Package command is what loopbook does on a terminal. It prints, needs no display, and knows no
// toolkit; the window is opened by whom Run is given.
package command

import (
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"loopbook/cases/diagnosis"
)

// Console is where a command reads and writes.
type Console struct {
	In       io.Reader
	Out, Err io.Writer
}

// The exit codes.
const (
	fine       = 0
	wrongInput = 1
	wrongUsage = 2
)

// errUsage marks an error of how a command was called.
var errUsage = errors.New("wrong usage")

// command is one word of the command line.
type command struct {
	usage string // its arguments
	about string // one line
	more  string // what --help adds
	run   func(ctx context.Context, c Console, args []string) error
}

func commands() map[string]command {
	return map[string]command{
		"analyse": {"FILE… [--prior workshop|flat] [--draws N]", "print what each case's measurements say, one JSON line a case",
			"FILE is a case, a bundle, or - for standard input. The workshop prior has causes as often as they are met,\n" +
				fmt.Sprintf("the flat one all alike. Each cause is simulated with %d cars; the window does it with %d.", analyseDraws, diagnosis.UsualDraws), analyse},
		"report": {"FILE -o OUT.pdf [--paper customer|record|trainer] [--lang en|de|es] [--page a4|letter] [--units metric|us] [--named] [--without-answer]", "write a case's paper as a PDF",
			"FILE is a case, a bundle, or - for standard input. Without --paper it is the technician's record. A trainer's sheet goes\n" +
				"without the customer's data unless --named keeps them, and --without-answer leaves out its last page.", writeReport},
		"import": {"FILE… [--conflicts mine|theirs|both] [--notebook PATH]", "take cases, bundles, collections or folders of them into the notebook",
			"Each bundle is taken whole or, on a fault, not at all; the others are taken all the same. What is there already isn't\n" +
				"taken twice. A case that says something else than the notebook's of the same id waits for --conflicts.", importFiles},
		"export": {"ID…|--all|--search WORDS -o FILE [--anonymous [--hide WORDS] [--preview]] [--photo-notes] [--notebook PATH]", "write cases of the notebook to a file",
			"A name that ends in .json gives the case alone, in .csv the table of cases; any other gives a bundle with its files,\n" +
				"of several cases a collection. --anonymous takes out the customer and what leads to one; --preview tells what goes\n" +
				"and which texts stay to be read, and writes nothing. Photos leave without the place, time and device that a camera\n" +
				"notes, unless --photo-notes asks for them.", exportCase},
		"search": {"WORDS… [--notebook PATH]", "list the cases that hold all the words and meet the filters",
			"Each word may be the beginning of one. A filter is field:word, as cause:pump-weak, code:P0128, year:2010..2015,\n" +
				"stage:open, tag:\"two words\"; a minus before it turns it round. Without words it lists all, the newest first.", searchCases},
		"similar": {"ID [--notebook PATH]", "list the cases most like one, how far they are, and why",
			"0 is alike in everything, 1 in nothing: by differences of the loop, codes, symptoms and layout.", similarCases},
		"history": {"[--json] [--notebook PATH]", "print what the notebook's own cases say together",
			"Causes by code, engine, odometer and month; minutes of checks; what came back; whether first guesses were right.", printHistory},
		"generate": {"--cases N --notebook PATH [--seed S]", "fill a notebook with invented cases, to try it at scale",
			"The same seed gives the same cases. They come from a plain model of a car and are of nobody.", generate},
		"layouts": {"", "list the layouts of cooling loops", "", listLayouts},
		"simulate": {
			"--layout NAME [--cause WORD] [--severity 0…1] [--ambient-c N] [--altitude-m N] [--protocol FILE] [--seed N] [--csv|--case]",
			"write a simulated car, for training: a case, or a time series",
			"A case holds what the driver tells, codes, a scan tool's log, the rounds of the protocol, every workshop check, and\n" +
				"the answer as its verdict. The same words give the same car. FILE is a list of steps, as\n" +
				`[{"label": "warm idle", "drive": "idle", "minutes": 25, "heater": "full", "measure": true}]` +
				"\nwith drive idle, raised or road. What comes out is made by a model and measured nowhere.", simulate,
		},
		"warm-up": {
			`FILE.csv… [--opens-c N] [--ambient-c N] [--map ect="COLUMN",time="COLUMN"]`,
			"print what each log tells of the warm-up, one JSON line a file",
			"FILE is a log as CSV, of any make, or - for standard input. Which column is what is found out; --map sets it by hand:\n" +
				"time, ect, rpm, speed, intake, load. Seconds count from the engine's start. The thermostat opens at 88 °C unless told.", warmUp,
		},
		"tour": {"", "show the main job as text, on the first demo case", "", tour},
	}
}

// Run carries out a command line and answers the exit code. Without a command it calls window, with
// the path of the notebook that is named, or "" for the user's own.
func Run(ctx context.Context, args []string, c Console, window func(ctx context.Context, notebook string) error) int {
	if len(args) == 0 || strings.HasPrefix(args[0], "--notebook") && !asksHelp(args) {
		return exitCode(c, openWindow(ctx, args, window))
	}
	name := args[0]
	if name == "help" || strings.HasPrefix(name, "-") && asksHelp(args) {
		fmt.Fprint(c.Out, overview())
		return fine
	}
	cmd, ok := commands()[name]
	if !ok {
		fmt.Fprintf(c.Err, "loopbook: no command %q%s\n\n%s", name, meant(name), overview())
		return wrongUsage
	}
	if asksHelp(args[1:]) {
		fmt.Fprintf(c.Out, "loopbook %s %s\n\n%s.\n%s\n", name, cmd.usage, strings.ToUpper(cmd.about[:1])+cmd.about[1:], cmd.more)
		return fine
	}
	err := cmd.run(ctx, c, args[1:])
	if errors.Is(err, errUsage) {
		fmt.Fprintf(c.Err, "loopbook %s: %v\nusage: loopbook %s %s\n", name, err, name, cmd.usage)
		return wrongUsage
	}
	return exitCode(c, err)
}

// asksHelp reports whether a flag asks for help.
func asksHelp(args []string) bool {
	return slices.ContainsFunc(args, func(a string) bool { return a == "-h" || a == "-help" || a == "--help" })
}

func openWindow(ctx context.Context, args []string, window func(ctx context.Context, notebook string) error) error {
	set := flag.NewFlagSet("loopbook", flag.ContinueOnError)
	path := notebookFlag(set)
	rest, err := parse(set, args)
	if err != nil {
		return err
	}
	if len(rest) > 0 {
		return usagef("%q: see loopbook --help", rest[0])
	}
	return window(ctx, *path)
}

func exitCode(c Console, err error) int {
	switch {
	case err == nil:
		return fine
	case errors.Is(err, errUsage):
		fmt.Fprintf(c.Err, "loopbook: %v\n", err)
		return wrongUsage
	case errors.Is(err, context.Canceled):
		err = errors.New("stopped before its end")
	}
	fmt.Fprintf(c.Err, "loopbook: %v\n", err)
	return wrongInput
}

func overview() string {
	all := commands()
	names := make([]string, 0, len(all))
	for name := range all {
		names = append(names, name)
	}
	slices.Sort(names)
	var b strings.Builder
	b.WriteString("loopbook opens the notebook's window, loopbook --notebook PATH that of another one.\n" +
		"With a command it works without a display:\n\n")
	for _, name := range names {
		fmt.Fprintf(&b, "  %-8s %s\n", name, all[name].about)
	}
	b.WriteString("\nloopbook COMMAND --help tells more. Exit codes: 0 fine, 1 the input is wrong, 2 wrong usage.\n")
	return b.String()
}

// meant says what to do with a file that stands where a command does.
func meant(name string) string {
	if _, err := os.Stat(name); err != nil {
		return ""
	}
	if strings.HasSuffix(name, ".db") {
		return "; loopbook --notebook " + name + " opens it"
	}
	return "; loopbook import " + name + " takes cases in"
}

// parse reads flags that may stand anywhere among the arguments, as a hurried
// hand types them, and answers what is left. Behind -- nothing is a flag.
func parse(set *flag.FlagSet, args []string) ([]string, error) {
	set.SetOutput(io.Discard)
	var rest []string
	for {
		if err := set.Parse(args); err != nil {
			return nil, fmt.Errorf("%w: %w", errUsage, err)
		}
		read := len(args) - set.NArg()
		ended := read > 0 && args[read-1] == "--"
		args = set.Args()
		if len(args) == 0 || ended {
			return append(rest, args...), nil
		}
		rest, args = append(rest, args[0]), args[1:]
	}
}

// parseAlone is parse for a command that takes flags alone.
func parseAlone(set *flag.FlagSet, args []string) error {
	rest, err := parse(set, args)
	if err == nil && len(rest) > 0 {
		err = usagef("%q is too much", rest[0])
	}
	return err
}

// lines writes JSON, a line each, with its signs as they are.
func lines(w io.Writer) *json.Encoder {
	out := json.NewEncoder(w)
	out.SetEscapeHTML(false)
	return out
}

func usagef(format string, args ...any) error {
	return fmt.Errorf("%w: %s", errUsage, fmt.Sprintf(format, args...))
}
