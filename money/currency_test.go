package money_test

import (
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/currency"

	"firstdrop/money"
)

// The independent list is the Unicode CLDR data in golang.org/x/text/currency.
// CLDR states the decimals that are usual in print; ISO 4217 those of the
// minor unit. Where the two differ by design, ISO 4217 counts here; the
// currencies concerned are named (from memory of the ISO list).
func TestDecimalsAgreeWithCLDR(t *testing.T) {
	printedWithout := strings.Fields("AFN ALL AMD COP GYD IDR IQD IRR KPW LAK LBP MGA MMK MNT MUR PKR RSD SOS SYP TZS UZS YER")
	seen := 0
	for a := 'A'; a <= 'Z'; a++ {
		for b := 'A'; b <= 'Z'; b++ {
			for c := 'A'; c <= 'Z'; c++ {
				code := string([]rune{a, b, c})
				decimals, ok := money.Currency(code).Decimals()
				if !ok {
					continue
				}
				seen++
				unit, err := currency.ParseISO(code)
				if err != nil {
					if !newerThanList[code] {
						t.Errorf("%s is not in the independent list", code)
					}
					continue
				}
				scale, _ := currency.Standard.Rounding(unit)
				if named := slices.Contains(printedWithout, code); (scale != decimals) != named {
					t.Errorf("%s has %d decimals, the independent list says %d, named as different: %v", code, decimals, scale, named)
				}
			}
		}
	}
	if seen < 150 {
		t.Errorf("only %d currencies are known", seen)
	}
}

// newerThanList holds codes that came after the independent list was made.
var newerThanList = map[string]bool{"MRU": true, "STN": true, "SLE": true, "VES": true, "ZWG": true}

func TestUnknownCurrency(t *testing.T) {
	for _, code := range []money.Currency{"", "EU", "eur", "EURO", "XQQ", " EU", "R E"} {
		if _, ok := code.Decimals(); ok {
			t.Errorf("%q passes for a currency", code)
		}
	}
}
