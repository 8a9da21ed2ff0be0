package org.axlecause.casefile;

/**
 * Something that can be counted of a case; what does not apply is blank or 0.
 *
 * @param question what is asked with it, one of the constants here
 * @param code code of a cause, item, check or outcome
 * @param action action of a line, other cause of a pair, or when a probability was told
 * @param necessity necessity of a line
 * @param standing decision on a line, root or contributing, what became of a check or a probability
 * @param axle number of the axle
 * @param side side of the vehicle
 * @param currency ISO 4217 code of the amount
 * @param marks of which choices of members this is the first in its case, see {@link CauseMarks}; of a line 1 where it
 *     is the first with its item
 * @param bin probability in whole percent; of a line 1 where it was done
 */
public record Countable(
        String question,
        String code,
        String action,
        String necessity,
        String standing,
        int axle,
        String side,
        String currency,
        int marks,
        int bin)
        implements Comparable<Countable> {

    /** Every case once. */
    public static final String CASE = "case";
    /** How cases ended. */
    public static final String OUTCOME = "outcome";
    /** Causes that were confirmed. */
    public static final String CAUSE = "cause";
    /** Two causes of one case. */
    public static final String PAIR = "pair";
    /** Scope lines; the amount is net. */
    public static final String LINE = "line";
    /** Checks; the amount is in bits. */
    public static final String CHECK = "check";
    /** Checks that were made; the amount is in minutes. */
    public static final String MINUTES = "minutes";
    /** Probabilities of causes and what became of them; the amount is the probability. */
    public static final String CALIBRATION = "calibration";
    /** Cases for which probabilities were told. */
    public static final String TOLD = "told";

    /** Cause of a case of which none was confirmed. */
    public static final String UNDETERMINED = "undetermined";

    /** Standing of a cause with no confirmed cause upstream of it. */
    public static final String ROOT = "root";
    /** Standing of the other causes. */
    public static final String CONTRIBUTING = "contributing";

    static Countable aCase() {
        return new Countable(CASE, "", "", "", "", 0, "", "", 0, 0);
    }

    static Countable outcome(String code) {
        return new Countable(OUTCOME, code, "", "", "", 0, "", "", 0, 0);
    }

    static Countable cause(String code, int axle, String side, String role, int marks) {
        return new Countable(CAUSE, code, "", "", role, axle, side, "", marks, 0);
    }

    static Countable pair(String code, String other) {
        return new Countable(PAIR, code, other, "", "", 0, "", "", 0, 0);
    }

    static Countable told(String question, String code, String moment, String standing, int bin) {
        return new Countable(question, code, moment, "", standing, 0, "", "", 0, bin);
    }

    @Override
    public int compareTo(Countable other) {
        int order = question.compareTo(other.question);
        order = order == 0 ? code.compareTo(other.code) : order;
        order = order == 0 ? action.compareTo(other.action) : order;
        order = order == 0 ? necessity.compareTo(other.necessity) : order;
        order = order == 0 ? standing.compareTo(other.standing) : order;
        order = order == 0 ? Integer.compare(axle, other.axle) : order;
        order = order == 0 ? side.compareTo(other.side) : order;
        order = order == 0 ? currency.compareTo(other.currency) : order;
        order = order == 0 ? Integer.compare(marks, other.marks) : order;
        return order == 0 ? Integer.compare(bin, other.bin) : order;
    }
}
