package money_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"firstdrop/money"
)

func TestParseAmount(t *testing.T) {
	for text, want := range map[string]string{
		"24.90 EUR":    "24.90 EUR",
		"EUR 24.90":    "24.90 EUR",
		"24,9 EUR":     "24.90 EUR",
		" 24  GBP ":    "24.00 GBP",
		"-3 USD":       "-3.00 USD",
		"0.05 USD":     "0.05 USD",
		"-0.05 USD":    "-0.05 USD",
		"500 JPY":      "500 JPY",
		"1.250 KWD":    "1.250 KWD",
		"0 EUR":        "0.00 EUR",
		"012 EUR":      "12.00 EUR",
		"1234567 EUR":  "1234567.00 EUR",
		"JPY 12000000": "12000000 JPY",
	} {
		a, err := money.ParseAmount(text)
		if err != nil || a.String() != want {
			t.Errorf("ParseAmount(%q) = %v, %v; want %s", text, a, err, want)
		}
	}
}

func TestParseAmountRefuses(t *testing.T) {
	for text, message := range map[string]string{
		"":                         "write a number and a currency",
		"24.90":                    "write a number and a currency",
		"24.90EUR":                 "write a number and a currency",
		"24.90 eur":                "write EUR",
		"24.90 EUX":                "no currency code",
		"24.905 EUR":               "more than the currency's 2 decimals",
		"1.5 JPY":                  "more than the currency's 0 decimals",
		"1,234 EUR":                "may stand for thousands",
		"1,234 KWD":                "may stand for thousands",
		"1.234,50 EUR":             "no plain number",
		"1 234 EUR":                "write a number and a currency",
		"1_000 EUR":                "no plain number",
		".5 EUR":                   "no plain number",
		"5. EUR":                   "no plain number",
		"+5 EUR":                   "no plain number",
		"0x10 EUR":                 "no plain number",
		"99999999999999999999 EUR": "too large",
		"EUR EUR":                  "no plain number",
		"24.90 €":                  "no currency code",
	} {
		a, err := money.ParseAmount(text)
		if err == nil {
			t.Errorf("ParseAmount(%q) = %v, want an error", text, a)
		} else if !strings.Contains(err.Error(), message) {
			t.Errorf("ParseAmount(%q): %v; want %q in it", text, err, message)
		}
	}
}

func TestPrintingReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := money.Amount{
			Minor:    rapid.Int64Range(-1<<63+1, 1<<63-1).Draw(t, "minor"),
			Currency: money.Currency(rapid.SampledFrom([]string{"EUR", "JPY", "KWD"}).Draw(t, "currency")),
		}
		var back money.Amount
		text, _ := a.MarshalText()
		if err := back.UnmarshalText(text); err != nil || back != a {
			t.Fatalf("%v reads back as %v, %v", a, back, err)
		}
	})
}

func TestNotStated(t *testing.T) {
	a := euro(5)
	if err := a.UnmarshalText(nil); err != nil || a.IsStated() || a.String() != "" {
		t.Errorf("nothing reads as %v, %v", a, err)
	}
}

func FuzzParseAmount(f *testing.F) {
	for _, seed := range []string{"24.90 EUR", "EUR 24,9", "-0.05 USD", "1,234 KWD", "\x00 \xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := money.ParseAmount(text)
		if err != nil {
			return
		}
		if back, err := money.ParseAmount(a.String()); err != nil || back != a {
			t.Errorf("%q: %v reads back as %v, %v", text, a, back, err)
		}
	})
}

func ExampleParseAmount() {
	price, _ := money.ParseAmount("24,90 EUR")
	fmt.Println(price)
	_, err := money.ParseAmount("1,234 EUR")
	fmt.Println(err)
	// Output:
	// 24.90 EUR
	// "1,234 EUR" is no price in EUR: the comma in "1,234" may stand for thousands or for decimals; write a point for decimals and nothing for thousands
}
