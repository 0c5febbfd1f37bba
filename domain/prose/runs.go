package prose

import (
	"fmt"
	"slices"
	"strings"
)

// Runs writes whole numbers, days say, in their order: "1–3, 5".
func Runs(numbers []int) string {
	numbers = slices.Compact(slices.Sorted(slices.Values(numbers)))
	var parts []string
	for i := 0; i < len(numbers); {
		last := i
		for last+1 < len(numbers) && numbers[last+1] == numbers[last]+1 {
			last++
		}
		switch last - i {
		case 0:
			parts = append(parts, fmt.Sprint(numbers[i]))
		case 1:
			parts = append(parts, fmt.Sprint(numbers[i]), fmt.Sprint(numbers[last]))
		default:
			parts = append(parts, fmt.Sprintf("%d–%d", numbers[i], numbers[last]))
		}
		i = last + 1
	}
	return strings.Join(parts, ", ")
}
