package measure_test

import (
	"encoding/json"
	"fmt"

	"firstdrop/measure"
)

func ExampleParseLength() {
	for _, text := range []string{"250,2 cm", `8' 2 1/2"`, "2 m 45 cm", "98½ in", "8 3"} {
		l, err := measure.ParseLength(text, measure.Millimetres)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l)
	}
	// Output:
	// 2502 mm
	// 2501.9 mm
	// 2450 mm
	// 2501.9 mm
	// "8 3": two numbers without units; write 8' 3" or 8.3 cm
}

func ExampleLength() {
	wall, width := 4*measure.Metre, 530*measure.Millimetre
	fmt.Println(int64(wall/width), "whole drops and", wall%width)
	// Output: 7 whole drops and 290 mm
}

// The phase of drop i in a third-drop match is rounded once, from i: rounding a
// step and adding it up would drift.
func ExampleLength_Scaled() {
	repeat := 640 * measure.Millimetre
	for i := range int64(4) {
		fmt.Println(repeat.Scaled(i, 3).Mod(repeat))
	}
	// Output:
	// 0 mm
	// 213.333333 mm
	// 426.666667 mm
	// 0 mm
}

func ExampleLength_Format() {
	l := 2502 * measure.Millimetre
	fmt.Println(l.Format(measure.Metric))
	fmt.Println(l.Format(measure.Imperial))
	fmt.Println(l.CeilTo(measure.Sixteenth).Format(measure.Imperial))
	// Output:
	// 2502 mm
	// ≈ 8' 2 1/2"
	// 8' 2 9/16"
}

func ExampleLength_MarshalJSON() {
	text, _ := json.Marshal(map[string]measure.Length{"width": 21 * measure.Inch})
	fmt.Println(string(text))
	// Output: {"width":533.4}
}

func ExampleBoth() {
	fmt.Println(measure.Both(2502 * measure.Millimetre))
	// Output: 2502 mm (8' 2 1/2")
}

func ExampleLengthError() {
	_, err := measure.ParseLength("1,234 m", measure.Metres)
	e := err.(*measure.LengthError)
	fmt.Println(e.Text[:e.Offset], "|", e.Text[e.Offset:])
	fmt.Println(e.Why)
	// Output:
	// 1 | ,234 m
	// may be 1.234 m or 1234 m; write one of them
}

func ExampleUnit() {
	u, _ := measure.ParseUnit("inches")
	l, _ := measure.ParseLength("98 1/2", u)
	fmt.Println(u, u.Length(), u.System(), l)
	// Output: in 25.4 mm imperial 2501.9 mm
}

func ExampleSystem() {
	for _, sys := range []measure.System{measure.Metric, measure.Imperial} {
		fmt.Println(sys, (21 * measure.Inch).Format(sys))
	}
	// Output:
	// metric 533.4 mm
	// imperial 1' 9"
}

func ExampleArea() {
	roll := (530 * measure.Millimetre).Times(10050 * measure.Millimetre)
	fmt.Println(roll, "or", roll.Format(measure.Imperial))
	// Output: 5.33 m² or 57.3 sq ft
}

func ExampleAngle() {
	corner, _ := measure.ParseAngle("89°30'")
	fmt.Println(corner, (corner - 90*measure.Degree).Normalized())
	// Output: 89.5° 359.5°
}

func ExampleAngleError() {
	_, err := measure.ParseAngle("89°75'")
	fmt.Println(err.(*measure.AngleError).Offset, err)
	// Output: 4 "89°75'": minutes and seconds stay below 60
}
