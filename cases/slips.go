package cases

// Slips counts the letters of what was typed that are wrong, missing, too many, or changed places with their
// neighbour (optimal string alignment), against each beginning of word: of no letter first, of all of them last.
func Slips(typed, word string) []int {
	a, b := []rune(typed), []rune(word)
	rows := make([][]int, len(a)+1)
	for i := range rows {
		rows[i] = make([]int, len(b)+1)
		rows[i][0] = i
	}
	for j := range b {
		rows[0][j+1] = j + 1
	}
	for i := 1; i <= len(a); i++ {
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			n := min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				n = min(n, rows[i-2][j-2]+1)
			}
			rows[i][j] = n
		}
	}
	return rows[len(a)]
}
