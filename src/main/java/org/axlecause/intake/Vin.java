package org.axlecause.intake;

import java.util.regex.Pattern;

/** The form of a vehicle identification number: ISO 3779, and the check digit of 49 CFR 565.15. */
final class Vin {

    private static final Pattern FORM = Pattern.compile("[A-HJ-NPR-Z0-9]{17}");
    private static final String LETTERS = "ABCDEFGHJKLMNPRSTUVWXYZ";
    private static final String VALUES_OF_LETTERS = "12345678123457923456789";
    private static final int[] WEIGHTS = {8, 7, 6, 5, 4, 3, 2, 10, 0, 9, 8, 7, 6, 5, 4, 3, 2};
    private static final int CHECK_PLACE = 8;
    private static final String CHECK_DIGITS = "0123456789X";

    private Vin() {}

    /** Whether the text has the form of a number: 17 of the digits and the letters without I, O and Q. */
    static boolean hasForm(String text) {
        return FORM.matcher(text).matches();
    }

    /** Whether the maker's region is North America, where the check digit is binding. */
    static boolean isNorthAmerican(String number) {
        return number.charAt(0) >= '1' && number.charAt(0) <= '5';
    }

    /** Whether the ninth character is the check digit of the others. */
    static boolean hasItsCheckDigit(String number) {
        int sum = 0;
        for (int place = 0; place < WEIGHTS.length; place++) {
            sum += WEIGHTS[place] * value(number.charAt(place));
        }
        return CHECK_DIGITS.charAt(sum % CHECK_DIGITS.length()) == number.charAt(CHECK_PLACE);
    }

    private static int value(char character) {
        return Character.isDigit(character)
                ? Character.digit(character, 10)
                : Character.digit(VALUES_OF_LETTERS.charAt(LETTERS.indexOf(character)), 10);
    }
}
