package org.axlecause.intake;

import java.util.Locale;

/** Tells content types apart by their text; parameters other than a charset mean nothing here. */
final class MediaTypes {

    private MediaTypes() {}

    static boolean isBatch(String contentType) {
        return essence(contentType).startsWith("application/cloudevents-batch");
    }

    static boolean isStructured(String contentType) {
        return essence(contentType).startsWith("application/cloudevents") && !isBatch(contentType);
    }

    static boolean isJson(String contentType) {
        String essence = essence(contentType);
        boolean json = essence.equals("application/json") || essence.equals("text/json") || essence.endsWith("+json");
        return json && isUtf8(contentType);
    }

    private static boolean isUtf8(String contentType) {
        String lower = contentType.toLowerCase(Locale.ROOT);
        int charset = lower.indexOf("charset=");
        if (charset < 0) {
            return true;
        }
        String value =
                lower.substring(charset + "charset=".length()).replace("\"", "").strip();
        return value.startsWith("utf-8") || value.startsWith("us-ascii");
    }

    private static String essence(String contentType) {
        int parameters = contentType.indexOf(';');
        return (parameters < 0 ? contentType : contentType.substring(0, parameters))
                .strip()
                .toLowerCase(Locale.ROOT);
    }
}
