package org.axlecause.facts;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * One figure of one test, in SI units; shares are ratios.
 *
 * @param kind what it is
 * @param test identity of the test's entry
 * @param stage when the test was driven
 * @param brake brake applied
 * @param place wheel, axle or vehicle
 * @param value the value; null where it can't be observed
 * @param uncertainty standard uncertainty of the value; null where none can be stated
 * @param observable whether the test can show it
 * @param basis formula or mass basis that the figure follows; null where there is only one
 */
public record Figure(
        FigureKind kind,
        EntryId test,
        Stage stage,
        BrakeSystem brake,
        Place place,
        @Nullable BigDecimal value,
        @Nullable BigDecimal uncertainty,
        boolean observable,
        @Nullable String basis)
        implements Shown {

    /** Whether both figures come from the same test. */
    public boolean sameTest(Figure other) {
        return test.equals(other.test);
    }

    /** Whether it was made before the repair: only then it speaks about causes. */
    public boolean beforeRepair() {
        return stage != Stage.FINAL;
    }

    /** Whether it is at least that value; never where it can't be observed. */
    public boolean reaches(BigDecimal least) {
        return value != null && value.compareTo(least) >= 0;
    }

    /** Whether it, as a share of the axle's load, is at least that share of the half that its wheel bears. */
    public boolean reachesOfWheelLoad(BigDecimal least) {
        return value != null && value.add(value).compareTo(least) >= 0;
    }

    /** Whether it stays below that value; never where it can't be observed. */
    public boolean below(BigDecimal most) {
        return value != null && value.compareTo(most) < 0;
    }

    /** Whether it is more than so many times the other figure; never where one of them can't be observed. */
    public boolean moreThanTimes(BigDecimal times, Figure other) {
        return value != null && other.value != null && value.compareTo(other.value.multiply(times)) > 0;
    }

    /** Whether it is more than the other figure by over that amount; never where one of them can't be observed. */
    public boolean moreBy(BigDecimal amount, Figure other) {
        return value != null && other.value != null && value.compareTo(other.value.add(amount)) > 0;
    }

    /**
     * Whether this wheel reads more than so many times as strong beside its partner as in a run before; never where one of
     * the four can't be observed.
     */
    public boolean gainedOn(Figure partner, Figure before, Figure partnerBefore, BigDecimal times) {
        return value != null
                && partner.value != null
                && before.value != null
                && partnerBefore.value != null
                && value.multiply(partnerBefore.value)
                                .compareTo(partner.value.multiply(before.value).multiply(times))
                        > 0;
    }

    /** Whether it falls short of the other figure by at least that share of the other. */
    public boolean shortOf(Figure other, BigDecimal share) {
        return value != null
                && other.value != null
                && other.value.signum() > 0
                && other.value.subtract(value).compareTo(other.value.multiply(share)) >= 0;
    }

    /** Whether it differs from the other figure by more than that share of the larger one. */
    public boolean differsFrom(Figure other, BigDecimal share) {
        return value != null
                && other.value != null
                && value.subtract(other.value)
                                .abs()
                                .compareTo(value.max(other.value).multiply(share))
                        > 0;
    }

    /** Whether it is less than that share of the other figure; never where one of them can't be observed. */
    public boolean belowShareOf(Figure other, BigDecimal share) {
        return value != null
                && other.value != null
                && other.value.signum() > 0
                && value.compareTo(other.value.multiply(share)) < 0;
    }

    /** Whether it is the smaller of the two figures; never where one of them can't be observed. */
    public boolean lessThan(Figure other) {
        return value != null && other.value != null && value.compareTo(other.value) < 0;
    }

    /** How clearly it falls short of the other figure: strong and clear from the given shares on. */
    public Strength shortfall(Figure other, BigDecimal clear, BigDecimal strong) {
        if (shortOf(other, strong)) {
            return Strength.STRONG;
        }
        return shortOf(other, clear) ? Strength.CLEAR : Strength.SLIGHT;
    }

    @Override
    public String shown() {
        return kind + " " + place + " = " + FigureWords.of(kind, value) + " (" + stage + " test " + test.id() + ", "
                + brake + " brake" + (basis == null ? "" : "; " + basis) + ")";
    }
}
