package org.axlecause.shared;

import jakarta.enterprise.context.RequestScoped;

/** The request that a page answers: where it went, and the random text that its forms are tied to. */
@RequestScoped
public class Visit {

    /** Cookie that holds the session. */
    public static final String SESSION = "axlecause-session";

    /** Cookie that holds the random text of the browser's forms. */
    static final String FORMS = "axlecause-forms";

    private String nonce = "";
    private String address = "/";
    private boolean secure;
    private boolean begun;

    /** Random text of this browser; empty outside pages. */
    public String nonce() {
        return nonce;
    }

    /** Path and query of the request. */
    public String address() {
        return address;
    }

    /** Whether the browser came by https, so that its cookies must. */
    public boolean secure() {
        return secure;
    }

    /** Whether the browser doesn't have its random text yet. */
    boolean begun() {
        return begun;
    }

    void comes(String newAddress, boolean byHttps) {
        address = newAddress;
        secure = byHttps;
    }

    void has(String newNonce, boolean isNew) {
        nonce = newNonce;
        begun = isNew;
    }
}
