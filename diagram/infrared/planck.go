// Package infrared tells what is there from what an infrared thermometer
// shows.
//
// The thermometer is taken to weigh all of 8 to 14 µm alike and nothing else.
// In that band radiance does not grow with T⁴: the T⁴ law is 3 K off at an
// emissivity of 0.6, so Planck's law is summed. Radiances are W/(m² sr).
package infrared

import "math"

const (
	secondConstant = 14387.768775   // µm K, hc/k, exact SI
	stefan         = 5.670374419e-8 // W/(m² K⁴), exact SI
	bandLow        = 8.0            // µm
	bandHigh       = 14.0           // µm
	series         = 15 / (math.Pi * math.Pi * math.Pi * math.Pi)
)

// fraction is the share of a blackbody's radiance below λ, for λT in µm K:
// the series of Chang and Rhee, Int. Comm. Heat Mass Transfer 11 (1984) 451,
// broken off at 1e-12 of its sum.
func fraction(lambdaT float64) float64 {
	x := secondConstant / lambdaT
	ratio := math.Exp(-x)
	sum, power := 0.0, 1.0
	for n := 1.0; ; n++ {
		power *= ratio
		term := power / n * (x*x*x + (3*x*x+(6*x+6/n)/n)/n)
		sum += term
		if !(term > 1e-12*sum) { // so that NaN ends too
			return series * sum
		}
	}
}

// radiance of a blackbody of that many kelvins in the band, above 0 K.
func radiance(kelvin float64) float64 {
	return stefan / math.Pi * math.Pow(kelvin, 4) * (fraction(bandHigh*kelvin) - fraction(bandLow*kelvin))
}

// slope is the derivative of radiance, given radiance at that temperature:
// 4L/T and what the band's ends gain and lose.
func slope(kelvin, l float64) float64 {
	end := func(lambda float64) float64 {
		x := secondConstant / (lambda * kelvin)
		return x * x * x * x / math.Expm1(x)
	}
	return 4*l/kelvin + stefan/math.Pi*math.Pow(kelvin, 3)*series*(end(bandHigh)-end(bandLow))
}

// temperature is the inverse of radiance, to 1e-6 K, and NaN where no
// temperature has that radiance or it is far above 1000 K. ln L over 1/T is
// nearly straight, so Newton's method closes in three or four steps.
func temperature(l float64) float64 {
	t := 350.0
	for i := 0; i < 20; i++ {
		at := radiance(t)
		inverse := 1/t - math.Log(l/at)*at/(slope(t, at)*t*t)
		if !(inverse > 0) { // so that NaN fails too
			return math.NaN()
		}
		step := 1/inverse - t
		t += step
		if math.Abs(step) < 1e-3 { // the step squares its error
			return t
		}
	}
	return math.NaN()
}
