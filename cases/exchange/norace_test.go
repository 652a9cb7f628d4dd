//go:build !race

package exchange_test

const underRace = false
