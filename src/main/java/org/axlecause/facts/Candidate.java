package org.axlecause.facts;

/**
 * A cause that the vehicle's layout allows at a place.
 *
 * @param code the cause
 * @param place where
 */
public record Candidate(CauseCode code, Place place) implements Comparable<Candidate> {

    @Override
    public int compareTo(Candidate other) {
        int byCode = code.compareTo(other.code);
        return byCode != 0 ? byCode : place.compareTo(other.place);
    }
}
