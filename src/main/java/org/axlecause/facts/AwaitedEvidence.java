package org.axlecause.facts;

/**
 * A line that does not count as scoped until what the policy wants is on record.
 *
 * @param line the line
 * @param clause clause that wants it
 * @param what what is wanted, in words
 * @param because ground
 */
public record AwaitedEvidence(LineKey line, ClauseCode clause, String what, Because because)
        implements Conclusion, Comparable<AwaitedEvidence> {

    @Override
    public String shown() {
        return line.shown() + " awaits " + what;
    }

    @Override
    public int compareTo(AwaitedEvidence other) {
        int byLine = line.compareTo(other.line);
        return byLine != 0 ? byLine : (what + because).compareTo(other.what + other.because);
    }
}
