//go:build race

package exchange_test

// underRace tells that the race detector makes memory dear.
const underRace = true
