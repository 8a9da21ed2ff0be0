package org.axlecause.policy;

import java.util.Arrays;
import java.util.Optional;

/**
 * Names a layer of a document: chain, region or site, the latter two with their code.
 *
 * @param layer which kind
 * @param code code of the region or site; empty for the chain
 */
public record LayerName(Layer layer, String code) {

    /** Reads a name such as chain or site quay-street; empty where it is none. */
    public static Optional<LayerName> of(String text) {
        String[] words = text.split(" ", 2);
        String code = words.length > 1 ? words[1].strip() : "";
        return Arrays.stream(Layer.values())
                .filter(layer -> layer != Layer.BASELINE && layer.toString().equals(words[0]))
                .filter(layer -> (layer == Layer.CHAIN) == code.isEmpty())
                .map(layer -> new LayerName(layer, code))
                .findFirst();
    }

    /** As a JSON pointer into a document names it. */
    public String pointer() {
        return switch (layer) {
            case REGION -> "/regions/" + escaped();
            case SITE -> "/sites/" + escaped();
            default -> "/chain";
        };
    }

    @Override
    public String toString() {
        return code.isEmpty() ? layer.toString() : layer + " " + code;
    }

    private String escaped() {
        return code.replace("~", "~0").replace("/", "~1");
    }
}
