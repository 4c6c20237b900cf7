/** Written by `npm run calibrate`; do not edit. How, from what and how well: docs/model/calibration.md. */
export interface EnsembleData {
  readonly version: number;
  readonly digest: string;
  /** The carry table with which the worlds were weighed. */
  readonly carry: string;
  readonly parameters: readonly string[];
  readonly weights: readonly number[];
  /** Places in the unit cube, 16 bits each, world by world, in base 64. */
  readonly units: string;
}

export const ENSEMBLE_DATA: EnsembleData = {
  version: 1,
  digest: "worlds-64-80fd5606a48ce1d4",
  carry: "table-5950-314399106ba7",
  parameters: [
    "friction.dry.hybrid",
    "friction.dry.solid",
    "friction.dry.pearl",
    "friction.dry.urethane",
    "friction.dry.polyester",
    "friction.dryWithRoughness",
    "friction.oil",
    "friction.filmRatio",
    "friction.exponent",
    "friction.laneRoughness",
    "filmReach.solid",
    "filmReach.pearl",
    "filmReach.urethane",
    "filmReach.polyester",
    "carriedOil.share",
    "carriedOil.reach",
    "carriedOil.urethane",
    "carriedOil.solid",
    "carriedOil.pearl",
    "carriedOil.polyester",
    "roll.resistance",
    "roughness.scale",
    "roughness.spread",
    "roughness.polishKeeps",
    "roughness.polishFloor",
    "wear.removal",
    "wear.footprint",
    "wear.laidDown.reactive",
    "wear.laidDown.urethane",
    "wear.laidDown.polyester",
    "wear.laidDownReach",
    "carry.level",
    "carry.shape",
  ],
  weights: [
    1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
    1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
  ],
  units:
    "uGAJ5nTJEy7DVHsufJopbENkjXcx5hVmtrp6Cssx4ThS2bDJSWisEYbD1OyKOQL54JlPdu/TxPVrq7b1J4JeMLkCsyL/hGVg/teqKl1KWhUCXRflXZ39yN0belk5qIbimREG7mEu9i9VTyyKd00pSJ7EeTXk8II/VGH4JkCRrkziNzpWreT1I1X36oKRAT9nN5DbTuxkLcTJq6TRPfj5REKTUOm7ARGTovf+jNJQGa/IVTqREdF6bBSq48yEosorNRZmPruoqKbqwkaP1ix31yGDFQq0QMDk/emVjmyHAZe44f5DCMJvFsH3T7+nyngXvBBnZNZcqmwP6KcVczgRH1PHu9/qRTz8o2fgYTcmwdZergOf8oSNMZVlzg9hcTQ9xTV4f7nzwJojK3Jb/IZRCB3eXnIGcnIpQwelYjmBAqWdmt1iQqpuTb5OninWASe+rYBFhOW7z/9mI2nlnjUtU/vyiNQ4HHWkeHPXPyLAqU76RcOkANOlfw3126I63svskhAqFmb+yXPyUz+imOvLoBhVmSosW8fXrXo/FT5lblv5NcOoTHP3uTFVMEyLVNMkVhajhGlrozREjqnBdD7QWV5YIXy2kvCZUD12W8D0k63BPwjthNQTManzivUYBhLmPoLFGIteEBK3Vu0F6CM/aYOJAt5Mwg8xRZbjm0WNDNll1PDDsOdDDno11wf6YkJIjm+23vmDcH76B4wQaHDw9+dlDqiQ+1MU07B286i1n/zzfTPtr6X1/7T35/aCquFZpXT7T4MvQFTPiQPQXdF+acOaiTGsfeobXCjg3W4sRevJ6bvl3s1c3hrKl082kWRmV9WnkuRRXG2fPVq+ilghuH0lPhCQyhWbz79cBo1r5JoCcUTug/OiHdqyR9LHtFBII2Wi25BmrvMoweJ/Wu72LSAXD65bp5S2CTVIewCFLLrAxRjy1qomRqgGXyvogRcHa2WGeMZAfrSXvMtJM3yuijJlAOB7zGTmfxn0o6o1Ho21ytvHx4UPvEUbtfzxuKZLzxtf1LS9b0a7wTpy7pd0/aCi8i4KgEeUeXaNW7vhHyaVYRSB3lpUvjlmT0DAhnHr4it1aJd4f17D0PV/YsSa9kwScXz+4VCKB+JRPMzdfgMBeio+ePmOhsjmdDiC+qx4CtB8OPacu9UtsA3mH2aMaTmhpco1BVMoNzd35KXjD4xENfHYE96d8OxVoHzmt19JDW+N9bPY/8ISjko6bvp4mZ0Q9nljDti4mVAGoeJm74tYTAFXaWn0og7Z7w8r+VZIvFPtcpeetj88/ogiORh8MvGznNoacj10hoyWlcuMabxuOI2n4iNJ5brVdsvfkrbmv7EkL8kMLQi0P8qJpufgDQataRuWsD1lWKHcCyPu0bMRroQfLEem7ccPDVcanEzgZH5j2H4/zc4wu5zxVEa4hItmj9fwEZDC8KVz3IY6XsCUIrcRFeM/7uMr+wF7Gr+6ak+nKRaLu7IzaVCrlCCeo84yXz9Zd27WuXgXkn8NMcCRdV/nX/679Fh4tEQzekHrFplIN2d2wqrpK4jynWMaKFuGAuo8pKj2Sx6/5dpGGuoiq0+GWgFPFl9tpSL+Z2EqDztqZzRnMCSH1yAud+PzFv2aznH8Sxfab3KSaS65P8W5NvdSm4XSHzti2olMYWPiobSmstDYVMNEtVAFkMzlPkNG7LVDWQjnAEpTuufjO4Kys7lLhkqwYMg+HDo7p9R/4iVYRJMeNCFnm83NafbY3O18KH4quVIsT4U6VECcfHbMFCViyjAcSt1n0G8fnK+Z/yByUXT8PiJkdXijyQHk5XpFhIf3US7rzLv9FWA5+WFlWXcYr0iuwNN+Skcv9DE0aCCy6wd/p6v1O7HnoJXrfndPwr8x7jCt9foYiikIdcmOIyAMJumWYMq2ZVeSkfKkiM3x1AC0NhIyyFTSRQklkyHLU8qZwemahSbOLYZncLy3YT8Fhl7xi+xcrdPMntlrIpE3YcXSyUo1bmaD/fIoDIUQGDp+UIpPvNu2ztYkP8sbMhJjP3SAmMu2YqGnHlrnQOKDRAa7Sf2xKKgNZayAsonQz1jgnmuZa6vUfAJPlo29hxd8p6UKzRPrQ6Y61ld4OowQ0QL6Kx5nbq3SQBuAEC9oEQhPJ85wDZxwxWO+HYQ0xzo1fCCJ3BFgDg1zip4bLylTA6nnNxGXSJ2Fym++3djKNU4GcPORFshORY/vHZZZAgPo4S0bCpYm0TowYx9v1Vzo2+qZKOgzGrcmsG4SmDnnx8TofTxTxnwjxCchUTlC5FoeMBD8DuQoAnI1HHIL+xAx9NhnsVTm7F3clNnv/9sfjTWc8Jr+1a/cV1ztUtCxptWzYGB9+c69VemwQLC82APG69twKtLxrtS/7hsb8lQn2IsK5azogXqyzyWSWHivnJbPRQ5RBUtigneFlgKz9TBQtHF/+PoTdGEp5VQ8vDpYXs1K81zEJZTnTcVX2cUCyTZEtgbj1oFoUaB+su1HHBdvOlKA/OUFGvvGLz8u1Kh5l5Lvwg1MkZao7/OUdMDJN8Pz5ZfO+t4WIFbc7LXuxXDpnhhgk4G8yFXoIcZKlbT937Uu1w4xtL65Lqwr3AbYEU5AOfSO0KkXKjI+a4YABCxVtE2ObGFTAV9qGxfSi6aGsRrQdfp7cPyVuSpp8esWeHyzo1TudMnhbJdtQ1yQiM6BT/QG3FQt3kTkwszT5Rhsk5jiL9cp8yrXCOC8FdnIKpcdnMS3S9yYTnZuq/7owhLiWkRpZvOuEYWRJHAhWAz0NZYqjZnNfrbM7OCvW2hpYarXIwRuq2DFefVbEGIQEJu9yoe1iG6eIr60K/FHndNokjiuPQwfKpJtrkFC3EfVbL1Y4l3Tyj+UIRhr+nx89AP+3D1Dsm/7J+pgAL/fFuNiC12zaXhMdBiE+KDQCWwgjqfoYl56INPU7jAtTPzylCCJgG29jyV9CeVaw3kLCRhIjJ6UV8+uQduHo3P8h4hjHmS2Bh+pCGjkX8Jrz4Lt5ub5f3xpMoRGApuKsc/s6LijS/k9lR4iO+0mR4sgZdqqFrQUJTop02Ia0UcUH/2XDlPnJeYIAOGep1l7S2xSpWUJxGHScVDpAqoR5WNAdW6shXRUA9Lxqc6G6LTPhDDnCDxJJE/gvdW/TfSFYLOgm4cylRxrLWdc+6KURkoSNxY5fEclodyrYiVp0tDdxyr2OQ1sIzAEu6qlvn7qlXx4wtatqp3oMuusVnFUyYbx8B4tFxDOG+fvM+iu9mOJ5TqqIsAgUilBf1eEVPnpovapqvKr/KsrwOu0c4JZ0y9PQkQiAHx0TP6HQId47wvqRBldf4u5kppporBzO2oC8SV/hStBDmoHKQteXNFdRs5pcxx1jbphwErrXKdlK1sN6N+z7wvLPSI7718mTyNFh6d/v6vHDvdGDyQFKXr3QutU6+d1JBvZ+hPt/u15Okw2OKLpQ0JBcIIXg+mq+mMW4zPB/JAYm9N0e8gBkcHFXL8QIEMVOz4znmLSiq2gsER7SWyo5qlqwwxw5b3U1c+VF8cPKXdqE2gNU0nNR4hqlx7Hmwx2EUB8SJsdum3HNCNkalrduN2qtdCeLc5fBjc7Nw7/UO364WtgYv0H0We7rLGy9UHoGkvq447ZNRGDCycqNdp2UuQqJvDg9WLG9xOO1oMDefapUXlAMWMKvTrrgsDWvdeDWG9O3C1WAe2evRGigpPO0rzBDCBqs7SlGNk4zsXp0ZYnCr3eOqFFoipwNblUeOWihpJ16hTVrPV1TKZ3/kpyRKIHX/Ch1u5Lod42qLyJWXXqsDeZ/fTpg9pw+6DukmSpblHYwpWST1GqTvIZc18bG0dBlS5Cgq9rJ4fh3BEEetQNy2uLZnH00bBBQM7NlGZwL1gHjbJy78lqVAA83mikVgNpDA2Jem5GYwIP+7nCsATivajgosoNG0sAoxpNa32Q9l2pUjYPbvNHzHI2379kgBBXBjojayxL4Z3qJCYIwTBaGaEoqck4Mkb6d7JyqIFr7qqoYAl/sGXas+aWHqy4+ukdcudE2P+TdXSaxzQsfq/8a7o93Bw/SKck0nJq9EzUo/gP3T/oRYTp6h6ujGLXVUkVLFBvAmsevwGmTIIrmT8kilWp7XDfX8kXfPXtwfYiHaCTV2Qks/5aJiL9w0brxHKghr/FoN6n40CaofdioRM8AhG+avY0pMy9zJ1y5RzBFNGPGcE2avp65pObg3dAvLgXvJErQw4LieB3A53WtRtrlJhsaId7ZH1ngPxKWdAWtsOgrthnqJv7Ry1c2zk+fbhWj2P7qS3C5YQWbV0fi/iTt3oNXIHCLrjyX8KT4Revpu/qZL44S08xKBwnHrf7EanKynQEW6AQ5kHC6Y776NUKFlTsCvZmOJlPYg2y9CajkXnmsjsC+3JaGmLZNaSvvpKImMRrNOUELhbn67rmunOryYB+3yRpCGi6I+eIi/Ca9nDWru6BhojRyATb3ZdNevEnmfs5rP34mWLxBgzADIbMnA1hipjrBQvQEN6cr1mmVy9cgVky9NTNtS9jYY1PLlI6BQyjR4oXARs9V3BoWSDoAburoHyMp7/uOFOI8bWm4mjoeYc6e21r1TCb86ZScvhl9esMOTLnCIUyYfcMnzMW0LLZEqhu4CWsfK2o5tz01aqDiIUvqP3fooHj10Qg3V+NuUsEVwITbUHspVZn1m4INpclkqa98QqbHTWXDr+13NjbcxR4IUQ7eMBB90AUdkiBUTQfD0+zrn8ynUPZdzS3yQl0kC0hNH3sXhZsdXwzuTW++jXlLmJtqOJPMeX6u4ZfG36iFXYXL+AGEVzXctJ/BbQNzb26lhg3tgCGmAXPFiVPtLNbZg89EfjFUOrrRaP/m/1zvdSkzB4eYLsDRpZfaE4IWSRpt9e2PHvTqfds7mTrlR+aSUdWHOO7vYHYksfEtRXmoF1CPfFY73KeQb9rFcnLfsUpgXNkadnOGJS3WkbEFRaxlsovWjhVSxefQpMCafdWJIwmxdDxo6w/xAMsjYi6VAZ+jAgpE9N1zO13M5Ps5e6XYYzfRRIkB5V/0Gxrb/cowd1a1G/2/Jn0WLNr2y2X5InCs/ezQFqMKnbDy4R+iEqv8/cUd7IP6rWRqmhQJWhsthRjRFSVCLHjo1EwiEQfhKeNbqUEEhW9nvuTZ083c8ktYBwuQ2M/veQnsUBH0wXSgwylkuesY1z2v5eth+IpFjzshjovJxxLzE+jQAzgQB3TmFfxG22tT7uDQVwydesDDGXC2q6Z0s7MOG3DOArL2Yckfc6bMthDTwbdlnnJZV0CCBFtVmH7CeQAj+5i3siQ9/WHrQhWyDRWjWFJ473RgobPpP9YVkEFYjtYtPdevtRP4Qh4eJCQ0cjaOrDEbFvmQtja+eXsJofG7Ku2U40ie4RBr847wri6dPz/ywcQhh9wkSKcPZvt0NNw8ablMID6RZ7T6InKc1KGcLlyJlqrQz4CIFOz6rps9qySz3NsFyziFz/yZ6bv1mkfIcSpCazWKIEPn75n1jaDTGXbgRJxrAqVzGdX8AsebhN8D6oJEgSSGSAe/c2M3I7txtJesTsi2sqhtfuiH3+j6xmDzotSR1KdyuGurVo0btEYyPhGEH/+J5QwUzLb9oxw",
};
