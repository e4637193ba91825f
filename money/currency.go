package money

import "strings"

// Currency is a code of ISO 4217 in capitals, such as "EUR". The zero value is
// none.
type Currency string

// The codes of ISO 4217 for money in circulation, by the number of decimals of
// their smallest unit. Written down from memory and checked in the tests
// against an independent list (the Unicode CLDR data in golang.org/x/text).
const (
	noDecimals    = " BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX VND VUV XAF XOF XPF "
	threeDecimals = " BHD IQD JOD KWD LYD OMR TND "
	twoDecimals   = " AED AFN ALL AMD ANG AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN" +
		" BWP BYN BZD CAD CDF CHF CNY COP CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL" +
		" GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW KYD KZT LAK LBP LKR" +
		" LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB" +
		" PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP" +
		" SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD UYU UZS VES WST XCD YER ZAR ZMW ZWG "
)

// Decimals returns how many decimals the currency's smallest unit has, and
// whether the code is known. For an unknown code it is 0 and false.
func (c Currency) Decimals() (int, bool) {
	if len(c) != 3 {
		return 0, false
	}
	word := " " + string(c) + " "
	switch {
	case strings.Contains(twoDecimals, word):
		return 2, true
	case strings.Contains(noDecimals, word):
		return 0, true
	case strings.Contains(threeDecimals, word):
		return 3, true
	}
	return 0, false
}
