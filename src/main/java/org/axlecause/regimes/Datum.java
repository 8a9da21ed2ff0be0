package org.axlecause.regimes;

/** Datum of a vehicle on which a limit may depend. */
enum Datum {
    FIRST_USED("the day of first use"),
    FIRST_REGISTERED("the day of first registration"),
    TYPE_APPROVED("the day of type approval"),
    ANTILOCK("whether an anti-lock system is fitted"),
    CIRCUIT_SPLIT("how the hydraulic circuits are split"),
    MAXIMUM_MASS("the maximum authorised mass"),
    UNLADEN_MASS("the unladen mass"),
    TEST_STATE("the mass as tested, the unladen and the maximum mass"),
    AXLE_BRAKES("the kind of brake of each axle"),
    TRAILER("the kind of trailer");

    private final String words;

    Datum(String words) {
        this.words = words;
    }

    String words() {
        return words;
    }
}
