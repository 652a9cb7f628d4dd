package logfile_test

import (
	"bytes"
	"context"
	"encoding/csv"
	"errors"
	"io"
	"runtime"
	"strconv"
	"testing"
	"time"

	"loopbook/cases/logfile"
)

// recording makes a log of eleven columns at 100 rows a second, as long as
// wanted, without holding it.
type recording struct {
	bytes int64 // still to come
	row   int
	buf   []byte
}

func (r *recording) Read(p []byte) (int, error) {
	if r.bytes <= 0 {
		return 0, io.EOF
	}
	p = p[:min(int64(len(p)), r.bytes)]
	for len(r.buf) < len(p) {
		r.next()
	}
	n := copy(p, r.buf)
	r.buf = r.buf[:copy(r.buf, r.buf[n:])]
	r.bytes -= int64(n)
	return n, nil
}

func (r *recording) next() {
	if r.row == 0 {
		r.buf = append(r.buf, "Time [s],Engine coolant temperature [°C],Manifold pressure [kPa],Engine RPM,Vehicle speed [km/h],Intake air [°C],Air flow [g/s],Throttle [%],Ambient [°C],Pedal D [%],Pedal E [%]\n"...)
	}
	r.number(float64(r.row)/100, 2)
	for i, typical := range []float64{85, 98, 1800, 52, 21, 14, 17, 12, 15, 16} {
		r.buf = append(r.buf, ',')
		r.number(typical+float64((r.row>>4+i)%7), i%2)
	}
	r.buf = append(r.buf, '\n')
	r.row++
}

func (r *recording) number(v float64, digits int) {
	r.buf = strconv.AppendFloat(r.buf, v, 'f', digits, 64)
}

// BenchmarkFrom reads 100 MB beside the standard reader of CSV, which does
// nothing with what it reads. Wanted: at least half its speed.
func BenchmarkFrom(b *testing.B) {
	text, err := io.ReadAll(&recording{bytes: 100 << 20})
	if err != nil {
		b.Fatal(err)
	}
	b.Run("log", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		for range b.N {
			got, err := logfile.From(context.Background(), "bench", bytes.NewReader(text), logfile.Options{})
			if err != nil || got.Rows < 1e6 {
				b.Fatalf("%d rows, %v", got.Rows, err)
			}
		}
	})
	b.Run("encoding-csv", func(b *testing.B) {
		b.SetBytes(int64(len(text)))
		for range b.N {
			r := csv.NewReader(bytes.NewReader(text))
			r.ReuseRecord = true
			r.FieldsPerRecord = -1 // the end may be cut
			rows := 0
			for ; ; rows++ {
				if _, err := r.Read(); errors.Is(err, io.EOF) {
					break
				} else if err != nil {
					b.Fatal(err)
				}
			}
			if rows < 1e6 {
				b.Fatalf("%d rows", rows)
			}
		}
	})
}

// BenchmarkGigabyte reads 1 GB and tells the most memory that the heap held.
// Wanted: 200 MB at most. One turn is enough: -benchtime 1x.
func BenchmarkGigabyte(b *testing.B) {
	const size = 1 << 30
	b.SetBytes(size)
	for range b.N {
		peak := heapPeak(b, func() {
			got, err := logfile.From(context.Background(), "bench", &recording{bytes: size}, logfile.Options{})
			if err != nil || got.Rows < 1e7 || len(got.Log.TimeS) > logfile.DefaultSamples {
				b.Fatalf("%d rows, %d samples, %v", got.Rows, len(got.Log.TimeS), err)
			}
		})
		b.ReportMetric(float64(peak)/(1<<20), "peak-MB")
		if peak > 200<<20 {
			b.Errorf("held %d MB, may hold 200", peak>>20)
		}
	}
}

// heapPeak is the most memory that was got from the system for the heap while
// do ran, looked at often.
func heapPeak(b *testing.B, do func()) uint64 {
	b.Helper()
	runtime.GC()
	done, peak := make(chan struct{}), make(chan uint64)
	go func() {
		var most uint64
		for {
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			most = max(most, m.HeapInuse)
			select {
			case <-done:
				peak <- most
				return
			case <-time.After(10 * time.Millisecond):
			}
		}
	}()
	do()
	close(done)
	return <-peak
}
