package editions_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"boxwright/config"
	"boxwright/pricing/editions"
)

func TestSignersThatDiffer(t *testing.T) {
	five, six := 5.0, 6.0
	day := config.Date{Year: 2026, Month: 12, Day: 1}
	key := func(letter string) string { return letter + "xDkIhP8KeQCf5LOkJKSDrDU8RRvHK55WwCo1J6CX34" }
	a := config.Signer{Name: "A", Role: "sales", Key: key("8"), From: day, MaxDiscount: &five}
	b := config.Signer{Name: "B", Role: "sales", Key: key("9"), From: day}
	with := func(s config.Signer, change func(*config.Signer)) config.Signer { change(&s); return s }
	for name, x := range map[string]struct {
		from, to []config.Signer
		want     []editions.SignerHow
	}{
		"the same":            {[]config.Signer{a, b}, []config.Signer{b, a}, nil},
		"one more":            {[]config.Signer{a}, []config.Signer{a, b}, []editions.SignerHow{editions.SignerAdded}},
		"one less":            {[]config.Signer{a, b}, []config.Signer{a}, []editions.SignerHow{editions.SignerRemoved}},
		"revoked":             {[]config.Signer{a}, []config.Signer{with(a, func(s *config.Signer) { s.Revoked = day })}, []editions.SignerHow{editions.SignerRevoked}},
		"a revocation undone": {[]config.Signer{with(a, func(s *config.Signer) { s.Revoked = day })}, []config.Signer{a}, []editions.SignerHow{editions.SignerReinstated}},
		"another limit":       {[]config.Signer{a}, []config.Signer{with(a, func(s *config.Signer) { s.MaxDiscount = &six })}, []editions.SignerHow{editions.SignerChanged}},
		"another role":        {[]config.Signer{a}, []config.Signer{with(a, func(s *config.Signer) { s.Role = "owner" })}, []editions.SignerHow{editions.SignerChanged}},
	} {
		t.Run(name, func(t *testing.T) {
			var got []editions.SignerHow
			from, to := &config.Catalogue{Signers: x.from}, &config.Catalogue{Signers: x.to}
			for _, c := range editions.Signers(from, to) {
				got = append(got, c.How)
			}
			assert.Equal(t, x.want, got)
			assert.Equal(t, name == "the same", x.want == nil)
		})
	}
}
