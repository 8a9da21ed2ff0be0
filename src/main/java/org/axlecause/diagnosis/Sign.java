package org.axlecause.diagnosis;

import org.axlecause.facts.Place;

/**
 * A symptom or a finding at a place.
 *
 * @param code its code
 * @param finding whether it is a finding
 * @param place where
 */
record Sign(String code, boolean finding, Place place) implements Comparable<Sign> {

    @Override
    public int compareTo(Sign other) {
        int byPlace = place.compareTo(other.place);
        if (byPlace != 0) {
            return byPlace;
        }
        int byKind = Boolean.compare(finding, other.finding);
        return byKind != 0 ? byKind : code.compareTo(other.code);
    }
}
