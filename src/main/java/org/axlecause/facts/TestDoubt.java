package org.axlecause.facts;

/**
 * A doubt about a test.
 *
 * @param code what is doubtful
 * @param place axle or wheel concerned
 * @param test identity of the test's entry
 * @param says the doubt in words, with values
 */
public record TestDoubt(DoubtCode code, Place place, EntryId test, String says) implements Shown {

    @Override
    public String shown() {
        return says;
    }
}
